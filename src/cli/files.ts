import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { BookError } from "../sheets/bookError";

/** A file or its content cannot be used: the command ends with exit code 2. */
export class UsageError extends Error {
  override name = "UsageError";
}

export function readBytes(file: string): Uint8Array {
  try {
    return readFileSync(file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new UsageError(
      code === "ENOENT"
        ? `${file}: there is no such file`
        : code === "EISDIR"
          ? `${file}: is a folder; give a file`
          : `${file}: cannot be read (${code ?? (error as Error).message})`,
    );
  }
}

/** Text of a file: UTF-8 or UTF-16 by its mark, else UTF-8, else Windows-1252. */
export function readText(file: string): string {
  const bytes = readBytes(file);
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** Writes a file whole or not at all: beside it first, then into its place. */
export function writeWhole(file: string, content: Uint8Array | string): void {
  const beside = join(dirname(file), `.${basename(file)}.${process.pid}.part`);
  try {
    writeFileSync(beside, content);
    renameSync(beside, file);
  } catch (error) {
    rmSync(beside, { force: true });
    throw new UsageError(
      existsSync(dirname(file))
        ? `${file}: cannot be written (${(error as Error).message})`
        : `${file}: cannot be written; there is no folder ${dirname(file)}`,
    );
  }
}

/** Runs something on a workbook file and puts the file's name before what is wrong with it. */
export async function named<T>(file: string, run: () => Promise<T>): Promise<T> {
  try {
    return await run();
  } catch (error) {
    if (error instanceof BookError) throw new UsageError(`${file}: ${error.message}`);
    throw error;
  }
}
