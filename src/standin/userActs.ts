import type { CellValue } from "../records/kind";
import type { Area } from "../sheets/cells/area";
import { bodyRows, boxAt, type Sheet, type StandInBook, type Table } from "./book";
import { deleteRows, insertRows, sortTable } from "./edits";

// What the user of a workbook does to sheets and tables, by hand and as a whole.

/** A sheet taken away, with all that is on it; the last one stays. */
export function deleteSheet(book: StandInBook, sheet: Sheet): void {
  if (book.sheets.length > 1) book.sheets.splice(book.sheets.indexOf(sheet), 1);
  book.dirty = true;
}

/** A row put into a table's body, before one of its rows from 0. */
export const insertTableRow = (book: StandInBook, sheet: Sheet, table: Table, row: number): void =>
  insertRows(book, sheet, bodyRows(table).first + row, 1);

/** A row of a table's body taken out; a table keeps one. */
export function deleteTableRow(book: StandInBook, sheet: Sheet, table: Table, row: number): void {
  const { first, last } = bodyRows(table);
  if (last > first) deleteRows(book, sheet, first + row, 1);
}

/** A table's lower edge drawn up or down; cells that it leaves stay where they are. */
export function resizeTable(book: StandInBook, table: Table, rows: number): void {
  table.area.bottom = Math.max(table.area.top + 1, table.area.bottom + rows);
  book.dirty = true;
}

/** A table's filter: the rows for which it does not hold are not shown. */
export function filterTable(
  sheet: Sheet,
  table: Table,
  isShown: (row: readonly CellValue[]) => boolean,
): void {
  const { first, last } = bodyRows(table);
  sheet.filter = table.area;
  for (let row = first; row <= last; row++)
    if (isShown(valuesIn(sheet, table.area, row))) sheet.hiddenRows.delete(row);
    else sheet.hiddenRows.add(row);
}

const valuesIn = (sheet: Sheet, { left, right }: Area, row: number): CellValue[] =>
  Array.from({ length: right - left + 1 }, (_, at) => boxAt(sheet, row, left + at)?.value ?? null);

/** A table sorted by what one of its columns shows, from 0 within it. */
export const sortByColumn = (
  book: StandInBook,
  table: Table,
  column: number,
  falling: boolean,
): void =>
  sortTable(book, table.name, (one, other) => {
    const order = String(one[column] ?? "").localeCompare(String(other[column] ?? ""));
    return falling ? -order : order;
  });

/** The cells of every sheet, to be put back when the user undoes what came after. */
export type Undoable = ReadonlyMap<Sheet, { readonly cells: Sheet["cells"]; readonly at: string }>;

/** Where a sheet's tables stand: cells are undone only while these are the same. */
const placesOf = ({ tables }: Sheet): string => JSON.stringify(tables.map(({ area }) => area));

/** What the user may come back to. */
export const undoPoint = (book: StandInBook): Undoable =>
  new Map(
    book.sheets.map((sheet) => [
      sheet,
      {
        cells: sheet.cells.map((row) => row?.map((box) => box && { ...box })),
        at: placesOf(sheet),
      },
    ]),
  );

/** Every cell as it was, on the sheets that are still there and laid out as they were. */
export function undo(book: StandInBook, point: Undoable): void {
  for (const sheet of book.sheets) {
    const before = point.get(sheet);
    if (before?.at === placesOf(sheet)) sheet.cells = before.cells.map((row) => [...(row ?? [])]);
  }
  book.dirty = true;
}
