import { type Memory, readMemoryXml, readRememberedXml } from "../memory/memory";
import type { Remembered } from "../sheets/remembered";
import { openFile } from "./book";
import type { Package } from "./package/package";

const PART = /^customXml\/item\d+\.xml$/i;

/** What a workbook remembers for us in its custom XML parts. */
export interface BookMemory {
  readonly memory?: Memory;
  readonly remembered?: Remembered;
}

/** Reads what a package remembers; what cannot be understood is left out. */
export function memoryIn(pack: Package): BookMemory {
  const texts = pack.names.filter((name) => PART.test(name)).map((name) => pack.text(name));
  const first = <T>(read: (xml: string) => T | undefined): T | undefined =>
    texts.map(read).find((found) => found !== undefined);
  return { memory: first(readMemoryXml), remembered: first(readRememberedXml) };
}

/** Reads the lineup that a workbook file was built for; undefined where it has none that can be understood. */
export const readMemory = (file: Uint8Array): Memory | undefined =>
  memoryIn(openFile(file).pack).memory;
