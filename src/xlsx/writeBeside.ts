import {
  type BesideTable,
  besideArea,
  besideReference,
  freeBesideNames,
  isBesideName,
} from "../sheets/besideTable";
import { BookError } from "../sheets/bookError";
import type { Area } from "../sheets/cells/area";
import { openFile } from "./book";
import { BookEdit } from "./patch/bookEdit";
import { addHiddenNames, definedNames, dropNames } from "./patch/definedNames";
import type { SheetEdit } from "./patch/sheetEdit";
import { understood } from "./readBook";
import { forgetAnswers } from "./remembered";

/**
 * A workbook file with result columns beside its tables; those from before make way. Everything else stays.
 *
 * @throws {BookError} where the file is no workbook, or something stands where a column should go
 */
export const withBeside = (file: Uint8Array, tables: readonly BesideTable[]): Promise<Uint8Array> =>
  understood(async () => {
    // Taken off first, so that a column that moves on leaves nothing behind.
    const book = new BookEdit(openFile(takenOff(file).file));
    for (const table of tables) writeTable(book, table);
    const taken = definedNames(book.pack, book.bookPart).map(({ name }) => name);
    const names = freeBesideNames(taken, tables.length);
    addHiddenNames(
      book.pack,
      book.bookPart,
      tables.map((table, at) => ({
        name: names[at] ?? "",
        reference: besideReference(table),
      })),
    );
    return book.save();
  });

/** A workbook file without the result columns of before, and for how many tables there were any. */
export const withoutBeside = (
  file: Uint8Array,
): Promise<{ readonly file: Uint8Array; readonly tables: number }> =>
  understood(async () => takenOff(file));

function takenOff(file: Uint8Array): { file: Uint8Array; tables: number } {
  const book = new BookEdit(openFile(file));
  const { pack, bookPart } = book;
  const ours = definedNames(pack, bookPart).filter(({ name }) => isBesideName(name));
  if (ours.length === 0) return { file, tables: 0 };
  for (const { reference } of ours) {
    const found = besideArea(reference);
    const sheet = found && book.sheet(found.sheet);
    if (sheet) cutArea(sheet, found.area);
  }
  dropNames(pack, bookPart, isBesideName);
  forgetAnswers(pack, bookPart);
  return { file: book.save(), tables: ours.length };
}

function writeTable(book: BookEdit, { sheet: name, area, cells, like, across }: BesideTable): void {
  const sheet = book.sheet(name);
  if (!sheet) throw new BookError(({ book }) => book.noSheet(name));
  for (const { row, column, value, formula } of cells) {
    const model = like[across ? row - area.top : column - area.left];
    const style = across
      ? sheet.stylesIn(model?.top ?? row).get(column)
      : sheet.stylesIn(row).get(model?.left ?? column);
    sheet.write({ row, column, value, formula, style });
  }
}

/**
 * Takes the cells of an area out. A blank cell that had a look of its own before keeps it: it is told by a
 * look that its table does not have.
 */
function cutArea(sheet: SheetEdit, { top, left, bottom, right }: Area): void {
  for (let row = top; row <= bottom; row++) {
    const styles = sheet.stylesIn(row);
    for (let column = left; column <= right; column++) {
      const style = styles.get(column);
      if (style === undefined) continue;
      const isLent = style === 0 || looksLikeTable(sheet, row, column, { top, left });
      if (isLent) sheet.cut(row, column);
      else sheet.write({ row, column, value: null });
    }
  }
}

/** Whether a cell of the row before the area, or of the column over it, has the same look. */
function looksLikeTable(
  sheet: SheetEdit,
  row: number,
  column: number,
  { top, left }: { readonly top: number; readonly left: number },
): boolean {
  const style = sheet.stylesIn(row).get(column);
  for (const [at, other] of sheet.stylesIn(row)) if (at < left && other === style) return true;
  for (let above = top - 1; above >= 0 && above >= top - REACH; above--)
    if (sheet.stylesIn(above).get(column) === style) return true;
  return false;
}

/** Rows over an area in which the look of its columns is looked for. */
const REACH = 60;
