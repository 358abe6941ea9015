import { objectKey } from "../rows/candidates";

/** A panel of the lineup with what stands in it under a designation of its own. */
export interface KnownPanel {
  readonly designation: string;
  readonly name?: string;
  readonly breaker?: { readonly designation: string };
  readonly cables?: readonly { readonly designation: string }[];
}

/**
 * The panel or section that a designation of a breaker or cable stands in, by the comparable form of the
 * designation. One that several panels have, or that is itself the name of a panel, stands for none.
 *
 * @example deviceKeys([{ designation: "M1", breaker: { designation: "52-M1" } }]).get("52m1") // "M1"
 */
export const deviceKeys = (panels: readonly KnownPanel[]): ReadonlyMap<string, string> => {
  const keys = new Map<string, string | undefined>();
  for (const { designation, breaker, cables = [] } of panels)
    for (const device of [breaker, ...cables]) {
      const key = device === undefined ? "" : objectKey(device.designation);
      if (key !== "")
        keys.set(key, keys.has(key) && keys.get(key) !== designation ? undefined : designation);
    }
  for (const { designation } of panels) keys.delete(objectKey(designation));
  return new Map([...keys].flatMap(([key, object]) => (object ? [[key, object]] : [])));
};
