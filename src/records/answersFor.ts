import { alikeIn, cellsOf } from "./cellsOf";
import type { CellValue, Row } from "./kind";
import { watcher } from "./onceForAlike";

/** Rows by which is seen what an answer reads, and whether a column holds ever other numbers. */
const TRIED = 32;
/** From this share of different cells on, or of groups, hardly two rows are alike. */
const VARIED = 0.5;

/**
 * What follows from each of some rows, worked out once for all that are alike in every cell that it reads, as a
 * limit is for all phases and panels of one rating. Where nearly every row has an answer of its own, as a
 * reading's has, each is worked out by itself.
 *
 * @param rows whose cells that are read do not change any more
 * @param answer reads single cells of the row, and nothing else that changes
 */
export function answersFor(
  rows: readonly Row[],
  answer: (row: Row) => CellValue,
): readonly CellValue[] {
  return (rows.length > TRIED && shared(rows, answer)) || rows.map(answer);
}

/** The answers by groups of rows that are alike; undefined where too few are, or where a row is read as a whole. */
function shared(
  rows: readonly Row[],
  answer: (row: Row) => CellValue,
): readonly CellValue[] | undefined {
  const { over, reads, asWhole } = watcher();
  const watched = (row: number): CellValue => answer(over(rows[row] ?? {}));
  triedOf(rows.length).forEach(watched);
  // A row that reads a cell that none before it did may part a group: then all is grouped anew.
  for (let known = -1; known !== reads.size; ) {
    known = reads.size;
    const ids = [...reads];
    if (asWhole() || ids.some((id) => isVaried(cellsOf(rows, id)))) return undefined;
    const { group, first } = alikeIn(rows, coarseFirst(rows, ids));
    if (first.length > VARIED * rows.length) return undefined;
    const answers = first.map(watched);
    if (!asWhole() && known === reads.size) return Array.from(group, (its) => answers[its] ?? null);
  }
  return undefined;
}

/** Rows evenly over a table. */
const triedOf = (count: number): number[] =>
  Array.from({ length: TRIED }, (_, at) => Math.floor((at * count) / TRIED));

/** Whether a column holds numbers of which hardly two are the same, as readings are. */
const isVaried = (cells: readonly CellValue[]): boolean => {
  const tried = triedOf(cells.length).map((row) => cells[row]);
  return new Set(tried.filter((cell) => typeof cell === "number")).size > VARIED * TRIED;
};

/** Columns of few different cells before others: rows are parted with less ado. */
const coarseFirst = (rows: readonly Row[], ids: readonly string[]): string[] =>
  [...ids].sort(
    (one, other) =>
      alikeIn(rows, [one]).first.length - alikeIn(rows, [other]).first.length ||
      (one < other ? -1 : 1),
  );
