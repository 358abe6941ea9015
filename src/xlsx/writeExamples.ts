import type { exampleSheet } from "../sheets/ours/exampleSheet";
import { openFile } from "./book";
import { draftSheet } from "./draftSheet";
import { BookEdit } from "./patch/bookEdit";
import { understood } from "./readBook";
import { newBook } from "./write/newBook";

/** A workbook file with the examples of the worksheet functions on a sheet: a new one, or a copy of one that exists. */
export const withExamples = (
  { planned, writes }: ReturnType<typeof exampleSheet>,
  existing?: Uint8Array,
): Promise<Uint8Array> =>
  understood(async () => {
    const book = new BookEdit(existing ? openFile(existing) : newBook(planned.title));
    book.renewSheet(draftSheet(planned, writes));
    return book.save();
  });
