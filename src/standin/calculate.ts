import { readMemoryXml } from "../memory/memory";
import { evaluate } from "../records/evaluate";
import { recordTables } from "../sheets/recordTable";
import type { SheetSnapshot, Snapshot, TableSnapshot } from "../sheets/snapshot";
import { bodyRows, boxAt, type Sheet, type StandInBook } from "./book";

/** What a workbook of the stand-in holds, read straight from it. */
export const snapshotOfBook = (book: StandInBook): Snapshot => ({
  sheets: book.sheets.map(sheetSnapshot),
  lineup: book.parts.map(({ xml }) => readMemoryXml(xml)).find((memory) => memory)?.lineup,
});

const sheetSnapshot = (sheet: Sheet): SheetSnapshot => ({
  name: sheet.name,
  tables: sheet.tables.map((table): TableSnapshot => {
    const { first, last } = bodyRows(table);
    const { left, right, top } = table.area;
    return {
      name: table.name,
      sheet: sheet.name,
      top,
      left,
      headers: Array.from({ length: right - left + 1 }, (_, column) =>
        String(boxAt(sheet, top, left + column)?.value ?? ""),
      ),
      rowCount: last - first + 1,
      cell: (row, column) => boxAt(sheet, first + row, left + column)?.value ?? null,
      formula: (row, column) => boxAt(sheet, first + row, left + column)?.formula,
    };
  }),
});

/**
 * Works out the formulas of record tables by the record kinds' own computation, in place of the
 * spreadsheet's calculation: cells that hold a formula get its value, all others stay.
 */
export function calculateRecords(book: StandInBook): void {
  const snapshot = snapshotOfBook(book);
  if (!snapshot.lineup) return;
  for (const { kind, table, at, rows } of recordTables(snapshot)) {
    const sheet = book.sheets.find(({ name }) => name === table.sheet) as Sheet;
    evaluate(kind, rows, snapshot.lineup).forEach((row, index) => {
      for (const [id, column] of at) {
        const box = boxAt(sheet, table.top + 1 + index, table.left + column);
        if (box?.formula !== undefined) box.value = row[id] ?? null;
      }
    });
  }
}
