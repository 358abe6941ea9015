import { memoizeFor } from "../quantities/memoizeFor";
import type { CellValue, Row } from "./kind";

/**
 * The cells of one column from the first row to the last, taken out of the rows once: looking down a column
 * costs a hundredth of looking into each row for it.
 *
 * @param rows that do not change any more
 * @param id of the column; a row without it has a blank there
 */
export const cellsOf = (rows: readonly Row[], id: string): readonly CellValue[] => {
  const known = cellsIn(rows);
  const before = known.get(id);
  if (before) return before;
  const cells = rows.map((row) => row[id] ?? null);
  known.set(id, cells);
  return cells;
};

const cellsIn = memoizeFor((_rows: readonly Row[]) => new Map<string, readonly CellValue[]>());

/** Says of rows what the cells of one of their columns are now, where whoever makes them has these at hand. */
export const keepCells = (rows: readonly Row[], id: string, cells: readonly CellValue[]): void => {
  cellsIn(rows).set(id, cells);
};

/** Says that rows hold in one column what others do, where that is known of the others. */
export const shareCells = (from: readonly Row[], rows: readonly Row[], id: string): void => {
  const cells = cellsIn(from).get(id);
  if (cells) cellsIn(rows).set(id, cells);
};

/** Rows from the cells of their columns, by id. */
export function rowsOfCells(
  columns: ReadonlyMap<string, readonly CellValue[]>,
  count: number,
): readonly Row[] {
  const blank = blankRow([...columns.keys()]);
  const rows = Array.from({ length: count }, () => ({ ...blank }));
  for (const [id, cells] of columns) {
    rows.forEach((row, at) => {
      row[id] = cells[at] ?? null;
    });
    keepCells(rows, id, cells);
  }
  madeOf.set(rows, columns);
  return rows;
}

/** The columns that rows were made of: every one of them has a cell of each. */
const madeOf = new WeakMap<readonly Row[], ReadonlyMap<string, unknown>>();

/** Whether every one of some rows is known to have a cell of a column, be it blank. */
export const haveCells = (rows: readonly Row[], id: string): boolean =>
  madeOf.get(rows)?.has(id) ?? false;

/**
 * A row to copy. JavaScript engines keep an object of many fields that is put together one by one as a
 * dictionary, several times larger and slower than one that is read or copied whole.
 */
const blankRow = (ids: readonly string[]): Record<string, CellValue> =>
  JSON.parse(JSON.stringify(Object.fromEntries(ids.map((id) => [id, null]))));

/** Rows parted into groups of those that are alike in some columns. */
export interface Alike {
  /** The group of each row, counted from 0 in the order of their first rows. */
  readonly group: Int32Array;
  /** The first row of each group. */
  readonly first: readonly number[];
}

/**
 * The groups of rows that hold the same in every one of some columns, so that what follows from these cells
 * is worked out once for each group. Asked for again, also of other rows that share the cells, they are the
 * same groups.
 *
 * @param rows that do not change any more
 */
export const alikeIn = (rows: readonly Row[], ids: readonly string[]): Alike => {
  const [first, ...others] = ids.map((id) => groupsOf(cellsOf(rows, id)));
  return first
    ? others.reduce((alike, other) => together(alike)(other), first)
    : { group: new Int32Array(rows.length), first: rows.length > 0 ? [0] : [] };
};

/** Groups of cells that are the same; one that repeats the cell above is not looked up. */
const groupsOf = memoizeFor((cells: readonly CellValue[]): Alike => {
  const group = new Int32Array(cells.length);
  const first: number[] = [];
  const known = new Map<CellValue, number>();
  let [above, its]: [CellValue | undefined, number] = [undefined, 0];
  for (let row = 0; row < cells.length; row++) {
    const cell = cells[row] ?? null;
    if (cell !== above) {
      above = cell;
      its = known.get(cell) ?? first.length;
      if (its === first.length) {
        known.set(cell, its);
        first.push(row);
      }
    }
    group[row] = its;
  }
  return { group, first };
});

/** Groups of rows that are together in both of two partings. */
const together = memoizeFor((one: Alike) => memoizeFor((other: Alike) => both(one, other)));

function both(one: Alike, other: Alike): Alike {
  if (one.first.length <= 1) return other;
  if (other.first.length <= 1) return one;
  const group = new Int32Array(one.group.length);
  const first: number[] = [];
  const many = other.first.length;
  const known = placesFor(one.first.length * many, group.length);
  for (let row = 0; row < group.length; row++) {
    const pair = (one.group[row] ?? 0) * many + (other.group[row] ?? 0);
    let its = known.get(pair);
    if (its === undefined) {
      its = first.length;
      known.set(pair, its);
      first.push(row);
    }
    group[row] = its;
  }
  return { group, first };
}

interface Places {
  readonly get: (pair: number) => number | undefined;
  readonly set: (pair: number, group: number) => unknown;
}

/** Groups by the number of their pair: a plain list where that is not much longer than the rows are many. */
function placesFor(pairs: number, rows: number): Places {
  if (pairs > 8 * rows + 1024) {
    const places = new Map<number, number>();
    return { get: (pair) => places.get(pair), set: (pair, group) => places.set(pair, group) };
  }
  const places = new Int32Array(pairs).fill(-1);
  return {
    get: (pair) => {
      const group = places[pair] ?? -1;
      return group < 0 ? undefined : group;
    },
    set: (pair, group) => {
      places[pair] = group;
    },
  };
}

/** What follows for each row from what it shares with its group, worked out for the first row of each. */
export const forAlike = <T>(
  rows: readonly Row[],
  ids: readonly string[],
  answer: (row: Row) => T,
): ((row: number) => T) => {
  const { group, first } = alikeIn(rows, ids);
  const answers = first.map((row) => answer(rows[row] ?? {}));
  return (row) => answers[group[row] ?? 0] as T;
};

/** The rows of which a test of some of their cells is true, asked once for each group of rows that are alike in these. */
export const rowsAlike = (
  rows: readonly Row[],
  ids: readonly string[],
  test: (row: Row) => boolean,
): readonly number[] => {
  const { group, first } = alikeIn(rows, ids);
  const answers = first.map((row) => test(rows[row] ?? {}));
  const some: number[] = [];
  if (answers.includes(true))
    for (let row = 0; row < group.length; row++) if (answers[group[row] ?? 0]) some.push(row);
  return some;
};

/** The rows of each group of those that are alike in some columns, without some; no group is blank. */
export function alikeRows(
  rows: readonly Row[],
  ids: readonly string[],
  without: ReadonlySet<number>,
): readonly (readonly number[])[] {
  const { group, first } = alikeIn(rows, ids);
  const groups = first.map((): number[] => []);
  for (let row = 0; row < group.length; row++)
    if (!without.has(row)) groups[group[row] ?? 0]?.push(row);
  return groups.filter((some) => some.length > 0);
}
