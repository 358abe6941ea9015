import type { SheetCells, SheetSnapshot, TableSnapshot } from "../sheets/snapshot";
import { extentOf, joinsWithin } from "./scan/extent";
import { formulasOf } from "./scan/formulasOf";
import { cellIn } from "./scan/grid";
import type { StoredSheet, StoredTable } from "./storedSheet";

/** A sheet as the check, the intake and the builder see it. */
export function sheetSnapshot(sheet: StoredSheet): SheetSnapshot {
  const { name, hidden, merges, notes, unseen, hiddenColumns } = sheet;
  const extent = extentOf(sheet.cells);
  const rowCount = extent.rows;
  const cells: SheetCells = {
    rowCount,
    columnCount: extent.columns,
    cell: cellIn(sheet.cells),
    formula: formulasOf(sheet.cells, sheet.formulas),
    hidden: hiddenRows(sheet, 0, rowCount - 1),
    merges: joinsWithin(merges, extent),
    ...(hiddenColumns.length > 0
      ? {
          isColumnHidden: (column: number) =>
            hiddenColumns.some(([first, last]) => column >= first && column <= last),
        }
      : {}),
    ...(unseen.size > 0
      ? { unseen: (row: number, column: number) => unseen.get(`${row},${column}`) }
      : {}),
    ...(notes.size > 0
      ? {
          note: (row: number, column: number) => notes.get(`${row},${column}`),
          notedRows: new Set(Array.from(notes.keys(), (place) => Number.parseInt(place, 10))),
        }
      : {}),
  };
  return {
    name,
    hidden,
    tables: sheet.tables.map((table) => tableSnapshot(table, sheet, cells)),
    cells,
  };
}

const tableSnapshot = (
  table: StoredTable,
  sheet: StoredSheet,
  { cell, formula }: SheetCells,
): TableSnapshot => {
  const { top, left, rowCount } = table;
  return {
    ...table,
    sheet: sheet.name,
    hidden: hiddenRows(sheet, top + 1, top + rowCount),
    cell: (row, column) => cell(top + 1 + row, left + column),
    formula: (row, column) => formula(top + 1 + row, left + column),
  };
};

/** Rows from the first to the last that are hidden or filtered away, counted from the first; undefined where all are shown. */
function hiddenRows({ hiddenRows }: StoredSheet, first: number, last: number) {
  const hidden = hiddenRows.filter((row) => row >= first && row <= last).map((row) => row - first);
  return hidden.length > 0 ? new Set(hidden) : undefined;
}
