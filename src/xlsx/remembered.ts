import {
  type Memory,
  memoryXml,
  NAMESPACE,
  REMEMBERED_NAMESPACE,
  readMemoryXml,
  readRememberedXml,
  rememberedXml,
} from "../memory/memory";
import { NOTHING_REMEMBERED, type Remembered, rememberedOf } from "../sheets/kept/remembered";
import { openFile } from "./book";
import type { Package } from "./package/package";
import { addPart, dropPart, freeName, relate, unrelate } from "./package/relations";

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

/** Forgets what was answered for a check without a lineup; our part goes where it remembers nothing else. */
export function forgetAnswers(pack: Package, book: string): void {
  const { remembered } = memoryIn(pack);
  if (remembered?.survey === undefined) return;
  const { survey: _, ...others } = remembered;
  const isAll = JSON.stringify(rememberedOf(others)) === JSON.stringify(NOTHING_REMEMBERED);
  if (!isAll) {
    remember(pack, book, { remembered: others });
    return;
  }
  const part = parts(pack).find((name) => pack.text(name).includes(REMEMBERED_NAMESPACE));
  if (part === undefined) return;
  unrelate(pack, book, (relation) => relation.part === part);
  dropPart(pack, part);
}

function put(pack: Package, book: string, namespace: string, xml: string): void {
  const there = parts(pack).find((name) => pack.text(name).includes(namespace));
  const part = there ?? freeName(pack, "customXml/item#.xml");
  if (there === undefined || pack.text(there) !== xml) addPart(pack, part, "application/xml", xml);
  relate(pack, book, "customXml", part);
}
