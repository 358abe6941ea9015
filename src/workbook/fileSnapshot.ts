import { parseCellRef, type Sheet, type TableDefinition, type Workbook } from "hucre/xlsx";
import type { CellValue } from "../records/kind";
import type { SheetCells, SheetSnapshot, TableSnapshot } from "../sheets/snapshot";
import { formulasOf } from "./fileFormulas";
import { plain } from "./fileValue";

/**
 * A sheet as it was read. Nothing of the file library's own objects is held by it, so that a long
 * workbook can be read part by part.
 *
 * @param kept keeps a text
 */
export function sheetSnapshot(
  sheet: Sheet,
  dateSystem: Workbook["dateSystem"],
  kept: (text: string) => string,
): SheetSnapshot {
  const { name, hidden, veryHidden, merges = [] } = sheet;
  const rows = sheet.rows.map((row) =>
    row.map((value): CellValue => {
      const own = plain(value, dateSystem);
      return typeof own === "string" ? kept(own) : own;
    }),
  );
  const cells = cellsOf(rows, formulasOf(sheet, kept), notesOf(sheet));
  const tables: TableSnapshot[] = [];
  for (const table of sheet.tables ?? [])
    if (table.range) tables.push(tableSnapshot(table, table.range, sheet, cells));
  return {
    name,
    hidden: hidden || veryHidden,
    tables,
    cells: {
      ...cells,
      hidden: hiddenRows(sheet, 0, rows.length - 1),
      merges: merges.map(({ startRow, endRow, startCol, endCol }) => ({
        top: startRow,
        left: startCol,
        bottom: endRow,
        right: endCol,
      })),
    },
  };
}

const cellsOf = (
  rows: readonly (readonly CellValue[])[],
  formula: SheetCells["formula"],
  notes: ReadonlyMap<string, string>,
): SheetCells => ({
  rowCount: rows.length,
  columnCount: rows.reduce((most, { length }) => Math.max(most, length), 0),
  cell: (row, column) => rows[row]?.[column] ?? null,
  formula,
  note: (row, column) => notes.get(`${row},${column}`),
});

function tableSnapshot(
  { name, displayName = name, columns, showTotalRow }: TableDefinition,
  range: string,
  sheet: Sheet,
  cells: SheetCells,
): TableSnapshot {
  const { top, left, bottom } = corners(range);
  const last = showTotalRow ? bottom - 1 : bottom;
  return {
    name: displayName,
    sheet: sheet.name,
    top,
    left,
    headers: columns.map(({ name }) => unescapedName(name)),
    rowCount: last - top,
    hidden: hiddenRows(sheet, top + 1, last),
    ...bodyOf(cells, top + 1, left),
  };
}

const bodyOf = (
  { cell, formula }: SheetCells,
  top: number,
  left: number,
): Pick<TableSnapshot, "cell" | "formula"> => ({
  cell: (row, column) => cell(top + row, left + column),
  formula: (row, column) => formula(top + row, left + column),
});

const notesOf = ({ cells }: Sheet): ReadonlyMap<string, string> => {
  const notes = new Map<string, string>();
  for (const [at, { comment }] of cells ?? []) if (comment) notes.set(at, comment.text);
  return notes;
};

/** Rows from the first to the last that are hidden or filtered away, counted from the first; undefined where all are shown. */
function hiddenRows({ rowDefs }: Sheet, first: number, last: number) {
  const hidden = [...(rowDefs ?? [])]
    .filter(([row, { hidden }]) => hidden && row >= first && row <= last)
    .map(([row]) => row - first);
  return hidden.length > 0 ? new Set(hidden) : undefined;
}

export function corners(range: string) {
  const [first = "A1", second = first] = range.split(":");
  const start = parseCellRef(first);
  const end = parseCellRef(second);
  return { top: start.row, left: start.col, bottom: end.row, right: end.col };
}

/** A header over several lines: a table's definition writes the line's end as its number. */
const unescapedName = (name: string) =>
  name.replace(/_x([0-9A-Fa-f]{4})_/g, (_text, code) => String.fromCharCode(parseInt(code, 16)));
