import type { SheetCells, SheetSnapshot } from "../snapshot";
import { covers } from "./area";

/** The cells of a sheet without the result columns that were put beside its tables. */
export function ownCells({ cells, beside = [] }: SheetSnapshot): SheetCells | undefined {
  if (!cells || beside.length === 0) return cells;
  const isOurs = (row: number, column: number) =>
    beside.some((area) => covers(area, { top: row, left: column, bottom: row, right: column }));
  return {
    ...cells,
    cell: (row, column) => (isOurs(row, column) ? null : cells.cell(row, column)),
    formula: (row, column) => (isOurs(row, column) ? undefined : cells.formula(row, column)),
  };
}
