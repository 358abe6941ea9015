import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { type RoundtripWorkbook, saveXlsx, type WriteOptions, writeXlsx } from "hucre/xlsx";
import { type Laid, rowHeights } from "./rowHeights";

/** A new workbook as a file. */
export const writtenBook = async (book: WriteOptions): Promise<Uint8Array> =>
  withHeights(await writeXlsx(book), book.sheets);

/** A workbook that was opened, as a file again. */
export const savedBook = async (book: RoundtripWorkbook): Promise<Uint8Array> =>
  withHeights(await saveXlsx(book), book.sheets);

/**
 * Rows whose text needs more than a line get a height that a spreadsheet may change: the file library
 * knows only heights that a person set, and a row without any is shown one line high where the program
 * that opens the file takes its heights as they are.
 */
function withHeights(file: Uint8Array, sheets: readonly Laid[]): Uint8Array {
  const heights = sheets.map(rowHeights);
  if (heights.every(({ size }) => size === 0)) return file;
  const parts = unzipSync(file);
  heights.forEach((rows, at) => {
    const name = `xl/worksheets/sheet${at + 1}.xml`;
    const bytes = parts[name];
    if (!bytes || rows.size === 0) return;
    const text = strFromU8(bytes).replace(/<row r="(\d+)"(?![^>]*\bht=)/g, (row, number) => {
      const height = rows.get(Number(number) - 1);
      return height === undefined ? row : `${row} ht="${height}"`;
    });
    parts[name] = strToU8(text);
  });
  // What comes of it is packed once more, and then well.
  return zipSync(parts, { level: 0 });
}
