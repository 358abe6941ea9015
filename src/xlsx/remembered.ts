import {
  type Memory,
  memoryXml,
  NAMESPACE,
  REMEMBERED_NAMESPACE,
  readMemoryXml,
  readRememberedXml,
  rememberedXml,
} from "../memory/memory";
import type { Remembered } from "../sheets/remembered";
import { openFile } from "./book";
import type { Package } from "./package/package";
import { addPart, freeName, relate } from "./package/relations";

const PART = /^customXml\/item\d+\.xml$/i;

/** What a workbook remembers for us in its custom XML parts. */
export interface BookMemory {
  readonly memory?: Memory;
  readonly remembered?: Remembered;
}

const parts = (pack: Package): string[] => pack.names.filter((name) => PART.test(name));

/** Reads what a package remembers; what cannot be understood is left out. */
export function memoryIn(pack: Package): BookMemory {
  const texts = parts(pack).map((name) => pack.text(name));
  const first = <T>(read: (xml: string) => T | undefined): T | undefined =>
    texts.map(read).find((found) => found !== undefined);
  return { memory: first(readMemoryXml), remembered: first(readRememberedXml) };
}

/** Reads the lineup that a workbook file was built for; undefined where it has none that can be understood. */
export const readMemory = (file: Uint8Array): Memory | undefined =>
  memoryIn(openFile(file).pack).memory;

/**
 * Puts what is to be remembered into a package; what is not given stays as it is.
 *
 * @param book the workbook part
 */
export function remember(pack: Package, book: string, given: BookMemory): void {
  if (given.memory) put(pack, book, NAMESPACE, memoryXml(given.memory));
  if (given.remembered) put(pack, book, REMEMBERED_NAMESPACE, rememberedXml(given.remembered));
}

function put(pack: Package, book: string, namespace: string, xml: string): void {
  const there = parts(pack).find((name) => pack.text(name).includes(namespace));
  const part = there ?? freeName(pack, "customXml/item#.xml");
  if (there === undefined || pack.text(there) !== xml) addPart(pack, part, "application/xml", xml);
  relate(pack, book, "customXml", part);
}
