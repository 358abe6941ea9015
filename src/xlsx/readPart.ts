import { readXlsx, type Workbook } from "hucre/xlsx";
import { type StoredSheet, storedSheet } from "./storedSheet";

/** Some of a file's sheets, by name; without names all of them. */
export interface SheetsPart {
  readonly sheets?: string[];
}

/** Reads parts of a file, in their order. */
export type PartsReader = (
  file: Uint8Array,
  parts: readonly SheetsPart[],
) => Promise<readonly (readonly StoredSheet[])[]>;

export const readPart = async (
  file: Uint8Array,
  part: SheetsPart,
): Promise<readonly StoredSheet[]> => storedSheets(await readXlsx(file, part));

/** Reads one part after the other. */
export const readParts: PartsReader = async (file, parts) => {
  const read: (readonly StoredSheet[])[] = [];
  for (const part of parts) read.push(await readPart(file, part));
  return read;
};

export const storedSheets = ({ sheets, dateSystem }: Workbook): readonly StoredSheet[] =>
  sheets.map((sheet) => storedSheet(sheet, dateSystem));
