import { asQuantity } from "../lineup/quantityName";
import { RECORD_KINDS } from "./kinds";
import { OWN_QUANTITIES } from "./ownQuantities";

interface Issue {
  readonly path: PropertyKey[];
  readonly message: string;
}

/** What a lineup calls by a name that no record kind has: kinds left out or guarded, and quantities of criteria. */
export function unknownNames(json: unknown): Issue[] {
  const list = (part: string) => itemsOf(fieldOf(json, part));
  return [
    ...list("criteria").flatMap((one, at) =>
      unknown(fieldOf(one, "quantity"), isQuantity, OWN_QUANTITIES, ["criteria", at, "quantity"]),
    ),
    ...list("leaveOut").flatMap((one, at) =>
      unknown(fieldOf(one, "kind"), isKind, RECORD_KINDS, ["leaveOut", at, "kind"]),
    ),
    ...list("inspectionPoints").flatMap((one, at) =>
      itemsOf(fieldOf(one, "guards")).flatMap((guard, place) =>
        unknown(guard, isKind, RECORD_KINDS, ["inspectionPoints", at, "guards", place]),
      ),
    ),
  ];
}

const isKind = (name: string) => RECORD_KINDS.includes(name);

/** Whether it is a quantity of a record kind, in whatever unit. */
const isQuantity = (name: string) =>
  OWN_QUANTITIES.some((quantity) => asQuantity(1, name, quantity) !== undefined);

/** What is no text at all is the schema's matter. */
const unknown = (
  name: unknown,
  isKnown: (name: string) => boolean,
  all: readonly string[],
  path: PropertyKey[],
): Issue[] =>
  typeof name !== "string" || name.trim() === "" || isKnown(name.trim())
    ? []
    : [{ path, message: `must be one of ${all.join(", ")}` }];

const itemsOf = (list: unknown): readonly unknown[] => (Array.isArray(list) ? list : []);

const fieldOf = (holder: unknown, key: string): unknown =>
  typeof holder === "object" && holder !== null
    ? (holder as Record<string, unknown>)[key]
    : undefined;
