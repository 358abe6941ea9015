import { type Column, isBlank, type Row } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { type JudgedTable, type Rule, where } from "../context";
import type { Finding } from "../finding";
import { measured } from "../similar";

/** How seldom chance alone may make such a likeness in a table before it is worth a word. */
const SELDOM = 0.001;
/** Values are not spread evenly over their range: chance is reckoned so many times greater for each column. */
const UNEVEN = 4;
const PHASE_KEYS: ReadonlySet<string> = new Set(["pole", "phase", "combination"]);

/** Readings of a row, or of all phases of a part, that are the very same as those of another. */
export const sameRun: Rule = {
  id: "same-run",
  title: "The same readings twice",
  finds:
    "a row, or all phases of one part, whose measured numbers are digit for digit those of another, where chance would make that less than once in a thousand such tables",
  why: "Two instruments' worth of digits do not repeat. A block was copied to be typed over and was not, or readings went to two panels.",
  satisfies: "the readings of this panel; nothing, where they were measured so",
  quiet:
    "where the readings carry too few digits, or spread over too small a range, to tell a copy from chance; the finding gives the numbers",
  reads: "table",
  find: (table) => {
    const columns = measured(table);
    const chances = columns.map((column) => chanceOf(table, column));
    const found: Finding[] = [];
    const said = new Set<number>();
    for (const blocks of [blocksOf(table, true), blocksOf(table, false)]) {
      const pairs = (blocks.length * (blocks.length - 1)) / 2;
      const seen = new Map<string, readonly number[]>();
      for (const rows of blocks) {
        const values = rows.map((row) => columns.map(({ id }) => table.rows[row]?.[id] ?? null));
        const count = values.flat().filter((value) => !isBlank(value)).length;
        if (count < 2 || rows.some((row) => said.has(row))) continue;
        const name = JSON.stringify(values);
        const first = seen.get(name);
        if (!first) {
          seen.set(name, rows);
          continue;
        }
        const expected = values.reduce(
          (product, row) =>
            row.reduce<number>(
              (sofar, value, at) => (isBlank(value) ? sofar : sofar * (chances[at] ?? 1)),
              product,
            ),
          pairs,
        );
        if (expected >= SELDOM) continue;
        for (const row of rows) said.add(row);
        found.push(finding(table, columns, rows, first, count, expected));
      }
    }
    return found;
  },
};

function finding(
  table: JudgedTable,
  columns: readonly Column[],
  rows: readonly number[],
  first: readonly number[],
  count: number,
  expected: number,
): Finding {
  const [row = 0] = rows;
  const [earlier = 0] = first;
  const column = columns.find(({ id }) => !isBlank(table.rows[row]?.[id]))?.id ?? "";
  return {
    rule: "same-run",
    weight: "note",
    ...where(table, row, column),
    message: `${table.keys[row]}${rows.length > 1 ? ` and the ${rows.length - 1} after it` : ""}: ${count} readings are digit for digit those of ${table.keys[earlier]} (${where(table, earlier, column).address}). By the range and digits of these columns chance would make that about once in ${(1 / expected).toPrecision(1).replace(/e\+/, "e")} such tables. Were they copied?`,
    found: count,
  };
}

/** Rows that belong together: all phases of a part; or each row by itself. */
function blocksOf(table: JudgedTable, together: boolean): number[][] {
  const ids = table.kind.columns
    .filter(({ id, role }) => role === "key" && !PHASE_KEYS.has(id))
    .map(({ id }) => id);
  const blocks = new Map<string, number[]>();
  const name = (row: Row, at: number) =>
    together ? ids.map((id) => row[id]).join("\u0000") : String(at);
  for (const [at, row] of table.rows.entries()) {
    if (table.aside.has(at)) continue;
    const key = name(row, at);
    const block = blocks.get(key);
    if (block) block.push(at);
    else blocks.set(key, [at]);
  }
  return [...blocks.values()].filter((rows) => !together || rows.length > 1);
}

/**
 * How likely two readings of a column are the same by chance: the share of equal pairs among those that
 * stand in the table, or what its range and last digit allow, whichever is greater; at most 1.
 */
function chanceOf(table: JudgedTable, { id, unit }: Column): number {
  const values = table.rows.flatMap((row) => {
    const value = unit ? exactly(row[id], unit) : row[id];
    return typeof value === "number" && Number.isFinite(value) ? [value] : [];
  });
  if (values.length < 2) return 1;
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  const equal = [...counts.values()].reduce((sum, count) => sum + count * (count - 1), 0);
  const sorted = [...counts.keys()].sort((one, other) => one - other);
  const range = (sorted.at(-1) ?? 0) - (sorted[0] ?? 0);
  const steps = 1 + range / 10 ** -digitsAfter(sorted);
  // A copied table is full of equal pairs by its copies: these alone must not excuse them.
  const share = Math.max(0, equal - values.length) / (values.length * (values.length - 1));
  return Math.min(1, Math.max(UNEVEN / steps, share));
}

/** Digits after the point that nine in ten of the numbers get by with. */
function digitsAfter(values: readonly number[]): number {
  const digits = values
    .map((value) => (String(value).split(".")[1] ?? "").length)
    .sort((one, other) => one - other);
  return digits[Math.floor(0.9 * (digits.length - 1))] ?? 0;
}
