import type { FindingsText } from "../../messages/messages";
import { memoizeFor } from "../../quantities/memoizeFor";
import { type Column, isBlank } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { type JudgedTable, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";
import { decimals, groupNames, inOrder, measured } from "../similar";

/** How seldom chance alone may make such a likeness in a table before it is worth a word. */
export const SELDOM = 0.001;
/** Values are not spread evenly over their range: chance is reckoned so many times greater for each column. */
const UNEVEN = 4;
const PHASE_KEYS: ReadonlySet<string> = new Set(["pole", "phase", "combination"]);

/** Readings of a row, or of all phases of a part, that are the very same as those of another. */
export const sameRun: Rule = {
  id: "same-run",
  reads: "table",
  find: (table, { text }) => {
    const columns = measured(table);
    if (columns.length === 0) return [];
    const reckoning = reckoningOf(table);
    const told = new Set<number>();
    // One number alone tells no copy from chance.
    return [partsOf(table), columns.length > 1 ? rowsOf(table) : []].flatMap((blocks) =>
      copiesAmong(blocks, reckoning, told).map((copy) => finding(reckoning, copy, text)),
    );
  },
};

/** The readings of a table, and how likely two of them are the same by chance. */
export interface Reckoning {
  readonly table: JudgedTable;
  readonly columns: readonly Column[];
  /** Of each row's readings in a column the chance that two are the same. */
  readonly chance: (row: number, column: number) => number;
}

/** Of what was measured in a table; asked for by two rules. */
export const reckoningOf = memoizeFor((table: JudgedTable): Reckoning => {
  const columns = measured(table);
  const groups = groupNames(table);
  const chances = columns.map((column) => chancesIn(table, groups, column));
  return {
    table,
    columns,
    chance: (row, column) => chances[column]?.get(groups[row] ?? "") ?? 1,
  };
});

/** Rows that read as those before them do, and how many such copies chance would make. */
interface Copy extends Counted {
  readonly rows: readonly number[];
  readonly first: readonly number[];
}

/** The blocks of rows that read as an earlier one; their rows are added to those that are told. */
function copiesAmong(
  blocks: readonly (readonly number[])[],
  reckoning: Reckoning,
  told: Set<number>,
): Copy[] {
  const pairs = (blocks.length * (blocks.length - 1)) / 2;
  const sameMark = new Map<number, (readonly number[])[]>();
  return blocks.flatMap((rows): Copy[] => {
    const counted = countReadings(rows, reckoning, pairs);
    if (counted.count < 2 || rows.some((row) => told.has(row))) return [];
    const alike = sameMark.get(counted.mark) ?? [];
    const first = alike.find((earlier) => readsTheSame(reckoning, earlier, rows));
    if (!first) sameMark.set(counted.mark, [...alike, rows]);
    if (!first || counted.expected >= SELDOM) return [];
    for (const row of rows) told.add(row);
    return [{ ...counted, rows, first }];
  });
}

interface Counted {
  /** Rows that read the same have the same mark. */
  readonly mark: number;
  readonly count: number;
  /** How many such likenesses chance would make in the table. */
  readonly expected: number;
}

function countReadings(
  rows: readonly number[],
  { table, columns, chance }: Reckoning,
  pairs: number,
): Counted {
  let [mark, count, expected] = [0, 0, pairs];
  for (const row of rows)
    for (const [column, { id }] of columns.entries()) {
      const value = table.rows[row]?.[id];
      if (isBlank(value)) continue;
      mark = 3 * mark + (typeof value === "number" ? value : 1);
      count += 1;
      expected *= chance(row, column);
    }
  return { mark, count, expected };
}

const readsTheSame = (
  { table: { rows }, columns }: Reckoning,
  some: readonly number[],
  others: readonly number[],
): boolean =>
  some.length === others.length &&
  some.every((row, at) =>
    columns.every(({ id }) => (rows[row]?.[id] ?? null) === (rows[others[at] ?? -1]?.[id] ?? null)),
  );

function finding(
  { table, columns }: Reckoning,
  { rows, first, count, expected }: Copy,
  text: FindingsText,
): Finding {
  const [row = 0] = rows;
  const [earlier = 0] = first;
  const column = columns.find(({ id }) => !isBlank(table.rows[row]?.[id]))?.id ?? "";
  return {
    rule: "same-run",
    weight: "note",
    ...where(table, row, column),
    message: text.rules["same-run"].message(rowName(table, row), {
      further: rows.length - 1,
      count,
      earlier: rowName(table, earlier),
      address: where(table, earlier, column).address,
      seldom: (1 / expected).toPrecision(1).replace(/e\+/, "e"),
    }),
    found: count,
  };
}

/** Each row by itself. */
export const rowsOf = ({ rows, aside }: JudgedTable): number[][] =>
  rows.flatMap((_row, at) => (aside.has(at) ? [] : [[at]]));

/** The rows that belong together: all phases of a part. */
export const partsOf = memoizeFor((table: JudgedTable): number[][] => {
  const ids = table.kind.columns
    .filter(({ id, role }) => role === "key" && !PHASE_KEYS.has(id))
    .map(({ id }) => id);
  const blocks = new Map<string, number[]>();
  for (const [at, row] of table.rows.entries()) {
    if (table.aside.has(at)) continue;
    const key = ids.map((id) => row[id]).join("\u0000");
    const block = blocks.get(key);
    if (block) block.push(at);
    else blocks.set(key, [at]);
  }
  return [...blocks.values()].filter((rows) => rows.length > 1);
});

/** For the rows of each group how likely two of their readings in a column are the same by chance. */
function chancesIn(
  table: JudgedTable,
  groups: readonly string[],
  { id, unit }: Column,
): ReadonlyMap<string, number> {
  const values = new Map<string, number[]>();
  for (const [at, row] of table.rows.entries()) {
    const value = unit ? exactly(row[id], unit) : row[id];
    if (typeof value !== "number" || !Number.isFinite(value)) continue;
    const group = groups[at] ?? "";
    const sofar = values.get(group);
    if (sofar) sofar.push(value);
    else values.set(group, [value]);
  }
  return new Map([...values].map(([group, some]) => [group, chanceOf(some)]));
}

/**
 * How likely two of some readings are the same by chance: the share of equal pairs among them, or what
 * their range and last digit allow, whichever is greater; at most 1.
 */
function chanceOf(values: readonly number[]): number {
  if (values.length < 2) return 1;
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  const equal = [...counts.values()].reduce((sum, count) => sum + count * (count - 1), 0);
  const sorted = inOrder(counts.keys());
  const range = (sorted.at(-1) ?? 0) - (sorted[0] ?? 0);
  const steps = 1 + range / 10 ** -digitsAfter(sorted);
  // A copied table is full of equal pairs by its copies: these alone must not excuse them.
  const share = Math.max(0, equal - values.length) / (values.length * (values.length - 1));
  return Math.min(1, Math.max(UNEVEN / steps, share));
}

/** Digits after the point that nine in ten of the numbers get by with. */
function digitsAfter(values: Float64Array): number {
  const digits = values.map(decimals).sort();
  return digits[Math.floor(0.9 * (digits.length - 1))] ?? 0;
}
