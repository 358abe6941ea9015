import { readXlsx, type Workbook } from "hucre/xlsx";
import { type StoredSheet, storedSheet } from "./storedSheet";

/** Some of a file's sheets, by name; without names all of them. */
export interface Part {
  readonly sheets?: string[];
}

/** Reads a part of a file. */
export type PartReader = (file: Uint8Array, part: Part) => Promise<readonly StoredSheet[]>;

export const readPart: PartReader = async (file, part) => storedSheets(await readXlsx(file, part));

export const storedSheets = ({ sheets, dateSystem }: Workbook): readonly StoredSheet[] =>
  sheets.map((sheet) => storedSheet(sheet, dateSystem));
