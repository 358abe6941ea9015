import { bytesOf, textOf } from "../package/partText";
import { damaged } from "../package/readArchive";
import { TagReader } from "../scan/tagReader";
import { readXml, type XmlElement, XmlError } from "./readXml";

/** What a sheet's part says before and behind its cells, as one text in which the cells are left out. */
export interface SheetText {
  readonly text: string;
  readonly root: XmlElement;
  /** Where in the text the cells are left out. */
  readonly gap: number;
  readonly place: CellsPlace;
}

/** Where the cells stand in a sheet's part: behind their start tag, and before their end tag and behind it. */
export interface CellsPlace {
  readonly from: number;
  readonly to: number;
  readonly end: number;
}

const NAME = bytesOf("sheetData");
const [LT, GT, SLASH] = [60, 62, 47];

/** Finds the cells without reading them: their end is looked for from the end of the part. */
export function cellsPlace(bytes: Uint8Array, part: string): CellsPlace {
  const tags = new TagReader(bytes, part);
  tags.enter("worksheet");
  while (tags.nextChild()) {
    if (!tags.isNamed("sheetData")) {
      tags.skipElement();
      continue;
    }
    tags.skipAttributes();
    const from = tags.at;
    return tags.closed ? { from, to: from, end: from } : { from, ...endOfCells(bytes, from, tags) };
  }
  throw tags.broken((is) => is.noCells);
}

function endOfCells(bytes: Uint8Array, from: number, tags: TagReader) {
  for (let at = bytes.lastIndexOf(GT); at > from; at = bytes.lastIndexOf(GT, at - 1)) {
    const name = at - NAME.length;
    if (!NAME.every((byte, index) => bytes[name + index] === byte)) continue;
    const to = bytes.lastIndexOf(LT, name);
    if (bytes[to + 1] === SLASH) return { to, end: at + 1 };
  }
  throw tags.broken((is) => is.breaksOff);
}

/** @throws {BookError} where it is damaged */
export const sheetText = (bytes: Uint8Array, place: CellsPlace, part: string): SheetText =>
  textAround(bytes.subarray(0, place.from), bytes.subarray(place.to), place, part);

/**
 * The same of the bytes before the cells, and of those from their end tag on.
 *
 * @throws {BookError} where it is damaged
 */
export function textAround(
  head: Uint8Array,
  tail: Uint8Array,
  place: CellsPlace,
  part: string,
): SheetText {
  const before = textOf(head);
  const text = before + textOf(tail);
  try {
    return { text, root: readXml(text), gap: before.length, place };
  } catch (error) {
    if (error instanceof XmlError)
      throw damaged((told) => told.book.why.part(part, error.say(told)));
    throw error;
  }
}
