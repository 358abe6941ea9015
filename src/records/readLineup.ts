import { crossChecks } from "../lineup/crossChecks";
import { type Lineup, lineupSchema } from "../lineup/lineup";
import type { Said } from "../messages/reasons";
import type { Told } from "../messages/told";
import { pathText, plainly } from "../quantities/plainIssue";
import { quoted } from "../quantities/quoted";
import { checkAgainstKinds } from "./checkAgainstKinds";
import { repeatedKeys } from "./repeatedKeys";

/** Everything that is wrong with a lineup, each with the path to where it is. */
export interface LineupErrors {
  readonly ok: false;
  readonly errors: readonly { readonly path: string; readonly message: Said<Told> }[];
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
      errors: [
        { path: "(file)", message: ({ lineup }) => lineup.noJson((error as Error).message) },
      ],
    };
  }
  const twice = repeatedKeys(text).map(({ key, line }) => ({
    path: `line ${line}`,
    message: ({ lineup }: Told) => lineup.twice(quoted(key)),
  }));
  return twice.length > 0 ? { ok: false, errors: twice } : checkLineup(withoutSchema(json));
}

/** A lineup without the line by which a file tells an editor its schema. */
function withoutSchema(json: unknown): unknown {
  if (typeof json !== "object" || json === null || Array.isArray(json)) return json;
  const { $schema: _editors, ...lineup } = json as Record<string, unknown>;
  return lineup;
}

/** A lineup from parsed JSON, or every error in it at once. */
export function checkLineup(json: unknown): { ok: true; value: Lineup } | LineupErrors {
  const parsed = lineupSchema.safeParse(json);
  const errors = [
    ...(parsed.success ? [] : parsed.error.issues),
    ...crossChecks(json),
    ...checkAgainstKinds(json),
  ].map((issue) => ({ path: pathText(issue.path) || "(file)", message: plainly(issue, "lineup") }));
  return parsed.success && errors.length === 0
    ? { ok: true, value: parsed.data }
    : { ok: false, errors };
}
