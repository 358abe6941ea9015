import type { CellsOf, ExportColumn } from "../words/titles";
import type { RowWithUnits } from "./unitsBeside";

/**
 * Makes the reader of lines of which one column holds what are several columns of a record: a resistance
 * beside the time that it was read at, a pole's time beside the pole, the points of a curve one below the
 * other. Each line gets cells for all of them, filled where the line is theirs. Undefined where no column is so.
 *
 * @example chosenCells(columns)?.({ line: 2, cells: ["=H01", "30", "5.2"] }).cells // ["=H01", "30", "5.2", "5.2", ""]
 */
export const chosenCells = (
  columns: readonly ExportColumn[],
): ((row: RowWithUnits) => RowWithUnits) | undefined => {
  const chosen = columns.flatMap(({ from }) => (from ? [from] : []));
  if (chosen.length === 0) return undefined;
  const width = columns.length - chosen.length;
  // What another column is a part of comes first, since lines are counted by it.
  const parts = chosen.flatMap((from) => ("part" in from ? [from] : []));
  const others = chosen.flatMap((from) => ("part" in from ? [] : [from]));
  const count = lineCounter(chosen);
  return (row) => {
    const cells = Array.from({ length: width }, (_, at) => row.cells[at] ?? "");
    for (const from of parts) cells.push(from.part(cells[from.column] ?? ""));
    const nth = count(cells, row.line);
    const more = others.map((from) => (isOf(from, cells, nth) ? (cells[from.column] ?? "") : ""));
    return { ...row, cells: [...cells, ...more, ...row.cells.slice(width)] };
  };
};

type PartOf = Extract<CellsOf, { part: unknown }>;

const isOf = (from: Exclude<CellsOf, PartOf>, cells: readonly string[], nth: number): boolean =>
  "beside" in from ? from.is(cells[from.beside] ?? "") : from.nth === nth;

/** Counts lines with the same names, in runs one after the other or not; those without a name as far as they follow each other. */
const lineCounter = (chosen: readonly CellsOf[]) => {
  const names = chosen.flatMap((from) => ("names" in from ? [from.names] : []))[0];
  const counts = new Map<string, number>();
  let last = -1;
  return (cells: readonly string[], line: number): number => {
    if (names === undefined) return 0;
    if (names.length === 0 && line !== last + 1) counts.clear();
    last = line;
    const key = names.map((index) => cells[index] ?? "").join("\n");
    const now = (counts.get(key) ?? 0) + 1;
    counts.set(key, now);
    return now;
  };
};
