import type { CellValue } from "../../records/kind";
import type { Area } from "../../sheets/cells/area";
import type { SheetCells } from "../../sheets/snapshot";
import type { EachRow } from "../table/exportTable";
import type { Written } from "../table/written";

/** Fields that a line is found by as a record. */
const NAMES = ["object", "circuit", "section", "part", "operation", "position", "stage"] as const;

/** Lines that titles and the units below them may take. */
const HEAD_LINES = 4;

/** Tells of each line, in their order, the first and last sheet row of its titles, from 0. */
export function titleRows(): (each: EachRow) => readonly [number, number] {
  const first = new Map<number, number>();
  return ({ block: { line }, row }) => {
    const below = first.get(line) ?? row.line;
    first.set(line, below);
    return [line - 1, Math.max(line - 1, Math.min(line + HEAD_LINES - 2, below - 2))];
  };
}

/**
 * The cells that tell of a line which record it is: its names, each with the blank cells down to the line
 * where it is written above them.
 *
 * @param left first column of the block, from 0
 */
export const nameCells = (
  { row: { line, from } }: EachRow,
  written: ReadonlyMap<string, Written>,
  left: number,
  cells: SheetCells,
): Area[] =>
  NAMES.flatMap((field): Area[] => {
    const index = written.get(field)?.index;
    const own = index === undefined ? -1 : (from?.[index] ?? index);
    if (own < 0) return [];
    const column = left + own;
    let top = line - 1;
    while (top > 0 && isBlankCell(cells.cell(top, column))) top -= 1;
    return [{ top, bottom: line - 1, left: column, right: column }];
  });

const isBlankCell = (value: CellValue) => value === null || value === "";

/** What an area holds, by row. */
export const valuesIn = (
  { top, bottom, left, right }: Area,
  cells: SheetCells,
): (readonly CellValue[])[] =>
  Array.from({ length: bottom - top + 1 }, (_, row) =>
    Array.from({ length: right - left + 1 }, (_, column) => cells.cell(top + row, left + column)),
  );
