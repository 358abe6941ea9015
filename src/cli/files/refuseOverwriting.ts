import { existsSync, realpathSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { UsageError } from "./files";

/**
 * Sees to it that a command writes over no file unasked, before it does anything.
 *
 * @param outputs the files that it is to write
 * @param inputs the files that it reads
 * @param overwrite whether files that are there may be written over; what is read never
 * @throws {UsageError} that names the file
 */
export function refuseOverwriting(
  outputs: readonly string[],
  inputs: readonly string[],
  overwrite: boolean,
): void {
  const read = new Set(inputs.filter((file) => existsSync(file)).map((file) => realpathSync(file)));
  for (const file of outputs.filter((file) => existsSync(file))) {
    if (read.has(realpathSync(file))) throw new UsageError(({ files }) => files.isRead(file));
    if (!overwrite) throw new UsageError(({ files }) => files.exists(file));
  }
  const places = outputs.map(placeOf);
  const twice = outputs.find((_file, at) => places.indexOf(places[at] ?? "") !== at);
  if (twice !== undefined) throw new UsageError(({ files }) => files.twice(twice));
}

/** Where a file is or will be, however its name is spelled and through whatever links. */
const placeOf = (file: string): string => {
  if (existsSync(file)) return realpathSync(file);
  const folder = dirname(resolve(file));
  return join(existsSync(folder) ? realpathSync(folder) : folder, basename(file));
};
