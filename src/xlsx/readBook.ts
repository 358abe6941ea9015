import { groupedBy } from "../quantities/groupedBy";
import { besideArea, isBesideName } from "../sheets/besideTable";
import { BookError } from "../sheets/bookError";
import type { Snapshot } from "../sheets/snapshot";
import { type Book, openFile, worksheetsOf } from "./book";
import { damaged } from "./package/readArchive";
import { definedNames } from "./patch/definedNames";
import { readSheets, type SheetsReader } from "./readPart";
import { memoryIn } from "./remembered";
import { savedBy } from "./savedBy";
import { sheetSnapshot } from "./sheetSnapshot";

/**
 * What a workbook file holds.
 *
 * @param read reads its sheets
 * @throws {BookError} that says what the file is, where it is not a readable workbook
 */
export const readBook = (file: Uint8Array, read: SheetsReader = readSheets): Promise<Snapshot> =>
  understood(async () => {
    const book = openFile(file);
    const sheets = await read(file, book, [...worksheetsOf(book).keys()]);
    const { memory, remembered } = memoryIn(book.pack);
    const saved = savedBy(book.pack);
    const beside = groupedBy(besideIn(book), ({ sheet }) => sheet);
    return {
      sheets: sheets.map((sheet) => {
        const areas = beside.get(sheet.name)?.map(({ area }) => area);
        return { ...sheetSnapshot(sheet), ...(areas ? { beside: areas } : {}) };
      }),
      lineup: memory?.lineup,
      ...(memory?.formulas ? { formulas: memory.formulas } : {}),
      ...(saved ? { savedBy: saved } : {}),
      ...remembered,
    };
  });

/** Where result columns of ours stand. */
const besideIn = ({ pack, part }: Book) =>
  definedNames(pack, part).flatMap(({ name, reference }) =>
    isBesideName(name) ? (besideArea(reference) ?? []) : [],
  );

/** Runs something on a workbook file; whatever goes wrong with it is told in our own words. */
export async function understood<T>(run: () => Promise<T>): Promise<T> {
  try {
    return await run();
  } catch (error) {
    if (error instanceof BookError) throw error;
    throw damaged(() => (error instanceof Error ? error.message : String(error)));
  }
}
