import { statSync } from "node:fs";
import { relative } from "node:path";
import { UsageError } from "./files";
import { filesBelow } from "./filesBelow";

/** The workbooks that names of files and folders mean; of a folder, every .xlsx and .xlsm in it and below, by name. */
export const booksIn = (names: readonly string[]): string[] =>
  names.flatMap((name) => {
    if (!isFolder(name)) return [name];
    const books = below(name).filter((file) => isBook(relative(name, file)) || isFolder(file));
    if (books.length === 0) throw new UsageError(({ files }) => files.noBooks(name));
    return books;
  });

const isFolder = (name: string): boolean =>
  statSync(name, { throwIfNoEntry: false })?.isDirectory() ?? false;

/** Programs leave lock files, whose names begin so, beside an open workbook. */
const isBook = (file: string): boolean => /\.xls[xm]$/i.test(file) && !/(^|[\\/])[~.]/.test(file);

function below(folder: string): string[] {
  try {
    return filesBelow(folder);
  } catch (error) {
    throw new UsageError(({ files }) => files.unreadFolder(folder, (error as Error).message));
  }
}
