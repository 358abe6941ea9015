import { type Book, openFile, worksheetsOf } from "./book";
import { readSheetPart, scanWith, storedSheet } from "./readSheet";
import type { StoredSheet } from "./storedSheet";

/** Reads the sheets of a file with these numbers, in the order of the numbers. */
export type SheetsReader = (
  file: Uint8Array,
  book: Book,
  sheets: readonly number[],
) => Promise<readonly StoredSheet[]>;

/** Reads single sheets of an opened workbook by their numbers among its worksheets, one when asked for it. */
export function sheetReader(book: Book): (sheet: number) => StoredSheet {
  const sheets = worksheetsOf(book);
  const given = scanWith(book);
  return (number) => {
    const sheet = sheets[number];
    if (!sheet) throw new Error(`no sheet ${number}`);
    return storedSheet(book, sheet, readSheetPart(book, sheet, given));
  };
}

/** The same in a thread that is given the file alone. */
export const fileSheetReader = (file: Uint8Array): ((sheet: number) => StoredSheet) =>
  sheetReader(openFile(file));

/** Reads one sheet after the other. */
export const readSheets: SheetsReader = async (_file, book, sheets) =>
  sheets.map(sheetReader(book));
