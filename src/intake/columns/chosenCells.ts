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
  const count = lineCounter(chosen);
  return (row) => {
    const nth = count(row.cells);
    const own = Array.from({ length: width }, (_, at) => row.cells[at] ?? "");
    const more = chosen.map((from) =>
      isOf(from, row.cells, nth) ? (row.cells[from.column] ?? "") : "",
    );
    return { ...row, cells: [...own, ...more, ...row.cells.slice(width)] };
  };
};

const isOf = (from: CellsOf, cells: readonly string[], nth: number): boolean =>
  "beside" in from ? from.is(cells[from.beside] ?? "") : from.nth === nth;

/** Counts lines with the same names, in runs one after the other or not. */
const lineCounter = (chosen: readonly CellsOf[]) => {
  const names = chosen.flatMap((from) => ("names" in from ? [from.names] : []))[0];
  const counts = new Map<string, number>();
  return (cells: readonly string[]): number => {
    if (names === undefined) return 0;
    const key = names.map((index) => cells[index] ?? "").join("\n");
    const now = (counts.get(key) ?? 0) + 1;
    counts.set(key, now);
    return now;
  };
};
