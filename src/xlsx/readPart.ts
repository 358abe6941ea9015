import { type Book, openFile, worksheetsOf } from "./book";
import { scanWith, storedSheet } from "./readSheet";
import type { StoredSheet } from "./storedSheet";

/** Reads the sheets of a file with these numbers, in the order of the numbers. */
export type SheetsReader = (
  file: Uint8Array,
  book: Book,
  sheets: readonly number[],
) => Promise<readonly StoredSheet[]>;

/** Reads single sheets of an opened workbook by their numbers among its worksheets, one when asked for it. */
export function sheetReader(book: Book): (sheet: number) => Promise<StoredSheet> {
  const sheets = worksheetsOf(book);
  const given = scanWith(book);
  return async (number) => {
    const sheet = sheets[number];
    if (!sheet) throw new Error(`no sheet ${number}`);
    return storedSheet(book, sheet, given);
  };
}

/** The same in a thread that is given the file alone. */
export const fileSheetReader = (file: Uint8Array): ((sheet: number) => Promise<StoredSheet>) =>
  sheetReader(openFile(file));

/** Reads one sheet after the other. */
export const readSheets: SheetsReader = async (_file, book, sheets) => {
  const reader = sheetReader(book);
  const read: StoredSheet[] = [];
  for (const sheet of sheets) read.push(await reader(sheet));
  return read;
};
