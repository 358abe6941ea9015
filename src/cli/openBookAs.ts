import { availableParallelism } from "node:os";
import { type LayoutMap, readMapFile } from "../sheets/kept/layoutMap";
import type { Snapshot } from "../sheets/snapshot";
import { loadLineup } from "./buildBook";
import { named, readBytes, readText, UsageError } from "./files/files";
import { readShared } from "./readShared";

/** What is said of a workbook besides what it tells itself. */
export interface BookOptions {
  /** A map file: how blocks in somebody's own layout are read as records. */
  readonly map?: string;
  /** A lineup file, for a workbook that does not tell its lineup. */
  readonly lineup?: string;
  /** Cores that have nothing else to do: all the others, where nothing is said. */
  readonly spare?: number;
}

export function loadMaps(file: string): readonly LayoutMap[] {
  const read = readMapFile(readText(file));
  if (!read.ok) throw new UsageError(({ told }) => `${file}: ${read.say(told)}`);
  return read.value;
}

/** Reads a workbook with the maps and the lineup that are said of it. */
export async function openBookAs(
  book: string,
  { map, lineup, spare = availableParallelism() - 1 }: BookOptions,
): Promise<{ readonly bytes: Uint8Array; readonly snapshot: Snapshot }> {
  const maps = map === undefined ? undefined : loadMaps(map);
  const said = lineup === undefined ? undefined : loadLineup(lineup);
  const bytes = readBytes(book);
  const snapshot = await named(book, () => readShared(bytes, spare));
  return {
    bytes,
    snapshot: {
      ...snapshot,
      lineup: said ?? snapshot.lineup,
      maps: maps ?? snapshot.maps,
    },
  };
}
