import { crossChecks } from "./crossChecks";
import { type Lineup, lineupSchema } from "./lineup";

/** Everything that is wrong with a lineup, each with the path to where it is. */
export interface LineupErrors {
  readonly ok: false;
  readonly errors: readonly { readonly path: string; readonly message: string }[];
}

/**
 * A lineup from the text of its JSON file, or every error in it at once.
 *
 * @example readLineup('{"basis": "ISO"}') // { ok: false, errors: [{ path: "project", … }, { path: "basis", … }, …] }
 */
export function readLineup(text: string): { ok: true; value: Lineup } | LineupErrors {
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (error) {
    return {
      ok: false,
      errors: [{ path: "(file)", message: `is not JSON: ${(error as Error).message}` }],
    };
  }
  const parsed = lineupSchema.safeParse(json);
  const errors = [...(parsed.success ? [] : parsed.error.issues), ...crossChecks(json)].map(
    ({ path, message }) => ({ path: pathText(path) || "(file)", message }),
  );
  return parsed.success && errors.length === 0
    ? { ok: true, value: parsed.data }
    : { ok: false, errors };
}

/** `panels[3].breaker.medium` */
const pathText = (path: readonly PropertyKey[]) =>
  path
    .map((part) => (typeof part === "number" ? `[${part}]` : `.${String(part)}`))
    .join("")
    .replace(/^\./, "");
