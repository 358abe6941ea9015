import type { FindingsText } from "../../messages/messages";
import { groupBy } from "../../quantities/groupedBy";
import { memoizeFor } from "../../quantities/memoizeFor";
import { alikeRows, cellsOf } from "../../records/cellsOf";
import { type CellValue, type Column, isBlank } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { chanceIn, type Grain, grainOf, inGrain, seldom, tallyOf } from "../among/chance";
import { repeatedIn } from "../among/repeated";
import { groupsIn, measured, ratingsOf } from "../among/similar";
import { conditionsOf } from "../conditions";
import { type JudgedTable, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";

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
    const copiesOf = (blocks: readonly (readonly number[])[], of: Reckoning, tries = 1) =>
      copiesAmong(blocks, of, told, tries).map((copy) => finding(of, copy, text));
    const panels = panelsIn(table);
    const parts = partsOf(table);
    return [
      // One number alone tells no copy from chance.
      ...[panels, devicesOf(table), parts, columns.length > 1 ? rowsOf(table) : []].flatMap(
        (blocks) => copiesOf(blocks, reckoning),
      ),
      // Who copies a block leaves a column of it as it was measured.
      ...(columns.length > 1 ? columns : []).flatMap((_column, at) =>
        copiesOf(parts.filter(isLong), inColumns(reckoning, [at]), columns.length),
      ),
      // Of a curve, who copies what was read leaves what was set as it is.
      ...quantitiesIn(columns).flatMap((some, _at, all) =>
        copiesOf(rowsOf(table), inColumns(reckoning, some), all.length),
      ),
      ...withConditions(table).flatMap(({ blocks, of }) => copiesOf(blocks, of)),
    ];
  },
};

/** Rows in order that are worth looking at one column by itself. */
const LONG = 3;
const isLong = ({ length }: readonly number[]): boolean => length >= LONG;

/** The same of some of its columns alone. */
const inColumns = (
  { table, columns, grains, cells, chance }: Reckoning,
  ats: readonly number[],
): Reckoning => ({
  table,
  columns: ats.flatMap((at) => columns[at] ?? []),
  grains: ats.flatMap((at) => grains[at] ?? []),
  cells: ats.map((at) => cells[at] ?? []),
  read: (row, column) => cells[ats[column] ?? -1]?.[row] ?? null,
  chance: (row, column) => chance(row, ats[column] ?? -1),
});

/** Readings of one quantity in a row from which on they are worth looking at by themselves. */
const MANY = 4;

/** The places of the columns of each quantity, where there are several of many readings each. */
function quantitiesIn(columns: readonly Column[]): readonly (readonly number[])[] {
  const places = groupBy([...columns.keys()], (at) => columns[at]?.unit ?? "");
  return places.length > 1 ? places.filter(({ length }) => length >= MANY) : [];
}

/**
 * The phases of parts with their temperatures, of parts whose phases each have another one: these were read, and
 * who copies a part copies them as well.
 */
function withConditions(
  table: JudgedTable,
): { readonly blocks: readonly (readonly number[])[]; readonly of: Reckoning }[] {
  return conditionsOf(table).flatMap((condition) => {
    const cells = cellsOf(table.rows, condition.id);
    const blocks = partsOf(table).filter(
      (rows) => isLong(rows) && new Set(rows.map((row) => cells[row] ?? null)).size === rows.length,
    );
    return blocks.length > 1
      ? [{ blocks, of: reckoned(table, [...measured(table), condition]) }]
      : [];
  });
}

/** The readings of a table, and how likely two of them are the same by chance. */
export interface Reckoning {
  readonly table: JudgedTable;
  readonly columns: readonly Column[];
  /** How finely each column is read. */
  readonly grains: readonly Grain[];
  /** What was read in each column, row by row, in its grain. */
  readonly cells: readonly (readonly CellValue[])[];
  /** One of these. */
  readonly read: (row: number, column: number) => CellValue;
  /** Of each row's readings in a column the chance that two are the same. */
  readonly chance: (row: number, column: number) => number;
}

/** Of what was measured in a table; asked for by two rules. */
export const reckoningOf = memoizeFor(
  (table: JudgedTable): Reckoning => reckoned(table, measured(table)),
);

function reckoned(table: JudgedTable, columns: readonly Column[]): Reckoning {
  const { of, names } = groupsIn(table);
  const grains = columns.map((column) => grainOf(numbersIn(table, column)));
  const cells = columns.map(({ id }, at) => {
    const grain = grains[at];
    return cellsOf(table.rows, id).map((cell) =>
      typeof cell === "number" && grain ? inGrain(cell, grain) : cell,
    );
  });
  const known: (readonly number[])[] = [];
  // Asked of the few columns in which something is alike.
  const chancesOf = (at: number): readonly number[] => {
    const column = columns[at];
    known[at] ??= column ? chancesIn(cells[at] ?? [], of, names, column, grains[at]) : [];
    return known[at];
  };
  return {
    table,
    columns,
    grains,
    cells,
    read: (row, column) => cells[column]?.[row] ?? null,
    chance: (row, column) => chancesOf(column)[of[row] ?? 0] ?? 1,
  };
}

/** Rows that read as those before them do, and how many such copies chance would make. */
interface Copy {
  readonly count: number;
  readonly expected: number;
  readonly rows: readonly number[];
  readonly first: readonly number[];
}

/** The blocks of rows that read as an earlier one; their rows are added to those that are told. */
function copiesAmong(
  blocks: readonly (readonly number[])[],
  reckoning: Reckoning,
  told: Set<number>,
  tries: number,
): Copy[] {
  // In so many ways two blocks may be found alike.
  const pairs = (tries * blocks.length * (blocks.length - 1)) / 2;
  const marks = Float64Array.from(blocks, (rows) => markOf(rows, reckoning));
  const shared = repeatedIn(marks);
  if (shared.isNone) return [];
  const sameMark = new Map<number, (readonly number[])[]>();
  return blocks.flatMap((rows, at): Copy[] => {
    const mark = marks[at] ?? 0;
    if (!shared.has(mark)) return [];
    const count = countReadings(rows, reckoning);
    if (count < 2 || rows.some((row) => told.has(row))) return [];
    const alike = sameMark.get(mark) ?? [];
    const first = alike.find((earlier) => readsTheSame(reckoning, earlier, rows));
    if (!first) {
      alike.push(rows);
      sameMark.set(mark, alike);
      return [];
    }
    const expected = expectedOf(rows, reckoning, pairs);
    if (expected >= SELDOM) return [];
    for (const row of rows) told.add(row);
    return [{ count, expected, rows, first }];
  });
}

/** A number that is the same for rows that read the same. */
function markOf(rows: readonly number[], { cells }: Reckoning): number {
  let mark = 0;
  for (const row of rows)
    for (let column = 0; column < cells.length; column++) {
      const value = cells[column]?.[row];
      if (!isBlank(value)) mark = 3 * mark + (typeof value === "number" ? value : 1);
    }
  return mark;
}

/** How many readings some rows hold. */
const countReadings = (rows: readonly number[], { cells }: Reckoning): number =>
  rows.reduce((sum, row) => sum + cells.filter((column) => !isBlank(column[row])).length, 0);

/** How many rows that read as these do chance would make among so many pairs. */
function expectedOf(rows: readonly number[], { cells, chance }: Reckoning, pairs: number): number {
  let expected = pairs;
  for (const row of rows)
    for (let column = 0; column < cells.length; column++)
      if (!isBlank(cells[column]?.[row])) expected *= chance(row, column);
  return expected;
}

const readsTheSame = (
  { cells }: Reckoning,
  some: readonly number[],
  others: readonly number[],
): boolean =>
  some.length === others.length &&
  some.every((row, at) => cells.every((column) => column[row] === column[others[at] ?? -1]));

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
    weight: "query",
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
export const rowsOf = memoizeFor(({ rows, aside }: JudgedTable): readonly (readonly number[])[] =>
  rows.flatMap((_row, at) => (aside.has(at) ? [] : [[at]])),
);

/** All rows of each panel in a table, where the table has several of each. */
export const panelsIn = memoizeFor((table: JudgedTable) => blocksBy(table, ["object"]));

/** All rows of each device, such as the points of a meter. */
const devicesOf = (table: JudgedTable) => blocksBy(table, ["object", "part"]);

/** The rows that belong together: all phases of a part. */
export const partsOf = memoizeFor((table: JudgedTable): readonly (readonly number[])[] =>
  blocksBy(
    table,
    table.kind.columns
      .filter(({ id, role }) => role === "key" && !PHASE_KEYS.has(id))
      .map(({ id }) => id),
  ),
);

/** The rows that are alike in some columns, where there are several. */
export const blocksBy = (
  { rows, aside }: JudgedTable,
  ids: readonly string[],
): readonly (readonly number[])[] =>
  alikeRows(rows, ids, aside).filter((block) => block.length > 1);

/** The numbers of a column, in its unit. */
function numbersIn({ rows }: JudgedTable, column: Column): number[] {
  const numbers: number[] = [];
  for (const cell of cellsOf(rows, column.id)) {
    const value = cell === null ? undefined : numberOf(cell, column);
    if (value !== undefined) numbers.push(value);
  }
  return numbers;
}

const numberOf = (cell: CellValue | undefined, { unit }: Column): number | undefined => {
  const value = unit ? exactly(cell, unit) : cell;
  return typeof value === "number" && Number.isFinite(value) ? value : undefined;
};

/** For the rows of each group how likely two of their readings in a column are the same by chance. */
function chancesIn(
  cells: readonly CellValue[],
  of: Int32Array,
  names: readonly string[],
  column: Column,
  grain: Grain = { decimals: 0, digits: 1 },
): readonly number[] {
  const values = names.map((): number[] => []);
  for (let row = 0; row < cells.length; row++) {
    const cell = cells[row] ?? null;
    const value = cell === null ? undefined : numberOf(cell, column);
    if (value !== undefined)
      values[of[row] ?? 0]?.push(typeof cell === "number" ? value : inGrain(value, grain));
  }
  const tallies = values.map((some) => tallyOf(some, grain));
  const ofLike = chanceOfLike(names, values, grain);
  return tallies.map((tally, at) => {
    const own = chanceIn(tally);
    // A few readings, as those of two bus sections, tell little by themselves: their likes tell more.
    if (tally.readings === 0 || tally.readings >= FEW_READINGS) return own;
    return tally.near > 0 ? Math.max(own, ofLike(at)) : ofLike(at);
  });
}

/** Readings of a group below which those of other groups of its ratings tell how such readings lie. */
const FEW_READINGS = 12;

/** Gives of a group how likely two readings are the same among all readings of its ratings. */
function chanceOfLike(
  names: readonly string[],
  values: readonly (readonly number[])[],
  grain: Grain,
): (group: number) => number {
  const known = new Map<string, number>();
  return (group) => {
    const ratings = ratingsOf(names[group] ?? "");
    const before = known.get(ratings);
    if (before !== undefined) return before;
    const like = values.filter((_some, at) => ratingsOf(names[at] ?? "") === ratings);
    const chance = chanceIn(tallyOf(like.flat(), grain));
    known.set(ratings, chance);
    return chance;
  };
}
