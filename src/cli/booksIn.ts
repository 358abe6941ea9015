import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { UsageError } from "./files";

/** The workbooks that names of files and folders mean; of a folder, every .xlsx and .xlsm in it and below, by name. */
export const booksIn = (names: readonly string[]): string[] =>
  names.flatMap((name) => {
    if (!statSync(name, { throwIfNoEntry: false })?.isDirectory()) return [name];
    const books = readdirSync(name, { recursive: true, encoding: "utf8" })
      // Programs leave lock files beside an open workbook.
      .filter((file) => /\.xls[xm]$/i.test(file) && !/(^|[\\/])[~.]/.test(file))
      .sort()
      .map((file) => join(name, file));
    if (books.length === 0) throw new UsageError(({ files }) => files.noBooks(name));
    return books;
  });
