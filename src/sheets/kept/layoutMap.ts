import * as z from "zod/mini";
import type { Told } from "../../messages/told";
import { DATE_ORDERS } from "../../quantities/dates";
import { pathText, plainly } from "../../quantities/plainIssue";
import { quoted } from "../../quantities/quoted";
import { answer, type Result, refuse } from "../../quantities/result";
import { repeatedKeys } from "../../records/repeatedKeys";

const text = z.string().check(z.maxLength(200));
const row = z.int().check(z.minimum(1), z.maximum(1_048_576));

/**
 * How a block of a sheet that Gearproof did not make is read as the records of one kind: where it stands,
 * and what its columns mean. What is not said is found by inspection, as in an export.
 */
export const layoutMap = z.strictObject({
  sheet: text,
  /** Id of the record kind. */
  kind: text,
  /** Sheet row of the first line of titles, as the sheet numbers it, and the last row of the block. */
  titles: row,
  last: z.optional(row),
  /** First and last column of the block, from 1. */
  left: z.optional(z.int().check(z.minimum(1), z.maximum(16_384))),
  right: z.optional(z.int().check(z.minimum(1), z.maximum(16_384))),
  titleLines: z.optional(z.union([z.literal(1), z.literal(2), z.literal(3)])),
  units: z.optional(z.boolean()),
  shape: z.optional(z.enum(["long", "wide"])),
  /** Unit of the readings whose titles and cells tell none, such as a heading over the block names: `MΩ`. */
  unit: z.optional(text),
  decimal: z.optional(z.enum([".", ","])),
  dateOrder: z.optional(z.enum(DATE_ORDERS)),
  /** By title, what a column holds: a field, `resistance of L1-E`, `resistance of L1-E before`; what the layout states itself and is compared: `limit`, `corrected`, `spread`, `result`; or `left out`. */
  columns: z.optional(z.record(z.string(), text)),
  /** Titles of columns whose name is written once and holds for the blank cells below it, up to a blank line, a sum or a note. */
  down: z.optional(z.array(text)),
  /** By title word, what holds for every row: `{ "Panel": "=H01", "Stage": "before" }`. */
  facts: z.optional(z.record(z.string(), z.string())),
  /** By field, what a text of the sheet means: `{ "object": { "Bay 1": "=H01" } }`. */
  means: z.optional(z.record(z.string(), z.record(z.string(), text))),
});
export type LayoutMap = z.infer<typeof layoutMap>;

const mapFile = z.strictObject({
  maps: z.array(layoutMap).check(z.minLength(1), z.maxLength(1000)),
});

/** The text of a map file. */
export const writeMapFile = (maps: readonly LayoutMap[]): string =>
  `${JSON.stringify({ maps }, null, 2)}\n`;

/**
 * A map file: a JSON object with a list of maps.
 *
 * @example readMapFile('{"maps": [{"sheet": "IR", "kind": "insulation", "titles": 4}]}')
 */
export function readMapFile(json: string): Result<readonly LayoutMap[], Told> {
  let whole: unknown;
  try {
    whole = JSON.parse(json);
  } catch {
    return refuse("wrong", ({ files: { map } }) => map.noJson(map.right(EXAMPLE)));
  }
  const [twice] = repeatedKeys(json);
  if (twice) return refuse("wrong", ({ files }) => files.twice(quoted(twice.key), twice.line));
  const read = mapFile.safeParse(whole);
  if (read.success) return answer(read.data.maps);
  const [issue] = read.error.issues;
  // Maps are counted from 1, as a person counts them.
  const at = pathText(
    issue?.path.map((part) => (typeof part === "number" ? part + 1 : part)) ?? [],
  );
  return refuse("wrong", (told) => {
    const { map } = told.files;
    return map.noMap(at || undefined, issue ? plainly(issue, "map")(told) : "", map.right(EXAMPLE));
  });
}

const EXAMPLE =
  '{"maps": [{"sheet": "IR", "kind": "insulation", "titles": 4, "columns": {"Bay": "object"}}]}';
