import { textOf } from "../package/partText";
import { damaged } from "../package/readArchive";
import type { RowPlaces } from "../scan/scanSheet";
import { readXml, type XmlElement, XmlError } from "./readXml";

/** What a sheet's part says before and behind its cells, as one text in which the cells are left out. */
export interface SheetText {
  readonly text: string;
  readonly root: XmlElement;
  /** Where in the text the cells are left out. */
  readonly gap: number;
}

/** @throws {BookError} where it is damaged */
export function sheetText(bytes: Uint8Array, { from, to }: RowPlaces, part: string): SheetText {
  const before = textOf(bytes.subarray(0, from));
  const text = before + textOf(bytes.subarray(to));
  try {
    return { text, root: readXml(text), gap: before.length };
  } catch (error) {
    if (error instanceof XmlError) throw damaged(`its part ${part}: ${error.message}`);
    throw error;
  }
}
