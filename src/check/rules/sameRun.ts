import type { FindingsText } from "../../messages/messages";
import { memoizeFor } from "../../quantities/memoizeFor";
import { type CellValue, type Column, isBlank } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { coincidence, type Grain, grainOf, inGrain, seldom } from "../chance";
import { type JudgedTable, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";
import { groupNames, measured } from "../similar";

/** How seldom chance alone may make such a likeness in a table before it is worth a word. */
export const SELDOM = 0.001;
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
  /** How finely each column is read. */
  readonly grains: readonly Grain[];
  /** What a row reads in a column, in its grain. */
  readonly read: (row: number, column: number) => CellValue;
  /** Of each row's readings in a column the chance that two are the same. */
  readonly chance: (row: number, column: number) => number;
}

/** Of what was measured in a table; asked for by two rules. */
export const reckoningOf = memoizeFor((table: JudgedTable): Reckoning => {
  const columns = measured(table);
  const groups = groupNames(table);
  const grains = columns.map((column) => grainOf(numbersIn(table, column)));
  const chances = columns.map((column, at) => chancesIn(table, groups, column, grains[at]));
  const cells = columns.map(({ id }, at) =>
    table.rows.map((row) => {
      const [cell, grain] = [row[id] ?? null, grains[at]];
      return typeof cell === "number" && grain ? inGrain(cell, grain) : cell;
    }),
  );
  return {
    table,
    columns,
    grains,
    read: (row, column) => cells[column]?.[row] ?? null,
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
  { columns, read, chance }: Reckoning,
  pairs: number,
): Counted {
  let [mark, count, expected] = [0, 0, pairs];
  for (const row of rows)
    for (const column of columns.keys()) {
      const value = read(row, column);
      if (isBlank(value)) continue;
      mark = 3 * mark + (typeof value === "number" ? value : 1);
      count += 1;
      expected *= chance(row, column);
    }
  return { mark, count, expected };
}

const readsTheSame = (
  { read, columns }: Reckoning,
  some: readonly number[],
  others: readonly number[],
): boolean =>
  some.length === others.length &&
  some.every((row, at) =>
    columns.every((_, column) => read(row, column) === read(others[at] ?? -1, column)),
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
      seldom: seldom(expected),
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

/** The numbers of a column, in its unit. */
const numbersIn = (table: JudgedTable, column: Column): number[] =>
  table.rows.flatMap((row) => numberOf(row[column.id], column) ?? []);

const numberOf = (cell: CellValue | undefined, { unit }: Column): number | undefined => {
  const value = unit ? exactly(cell, unit) : cell;
  return typeof value === "number" && Number.isFinite(value) ? value : undefined;
};

/** For the rows of each group how likely two of their readings in a column are the same by chance. */
function chancesIn(
  table: JudgedTable,
  groups: readonly string[],
  column: Column,
  grain: Grain = { decimals: 0, digits: 1 },
): ReadonlyMap<string, number> {
  const values = new Map<string, number[]>();
  for (const [at, row] of table.rows.entries()) {
    const value = numberOf(row[column.id], column);
    if (value === undefined) continue;
    const group = groups[at] ?? "";
    const sofar = values.get(group);
    if (sofar) sofar.push(inGrain(value, grain));
    else values.set(group, [inGrain(value, grain)]);
  }
  return new Map([...values].map(([group, some]) => [group, coincidence([some], grain)]));
}
