import {
  closeSync,
  existsSync,
  fchmodSync,
  fsyncSync,
  lstatSync,
  openSync,
  readFileSync,
  readlinkSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { type CommandLineText, commandLineFor } from "../../messages/commandLine";
import { BookError } from "../../sheets/bookError";

type CommandText = CommandLineText;

/** A file, its content or an option cannot be used: the command ends with exit code 2. */
export class UsageError extends Error {
  override name = "UsageError";

  /** @param say what is wrong, in the texts of the command line */
  constructor(readonly say: (text: CommandText) => string) {
    super(say(commandLineFor("en")));
  }
}

export function readBytes(file: string): Uint8Array {
  try {
    const there = statSync(file);
    if (!there.isFile() && !there.isDirectory())
      throw new UsageError(({ files }) => files.noFileRead(file));
    return readFileSync(file);
  } catch (error) {
    if (error instanceof UsageError) throw error;
    const { code, message } = error as NodeJS.ErrnoException;
    throw new UsageError(({ files }) => {
      if (code === "ENOENT") return files.missing(file);
      return code === "EISDIR" ? files.folder(file) : files.unreadable(file, code ?? message);
    });
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

/**
 * Writes a file whole or not at all: beside its place first, down to the disk, then renamed into it, so that
 * the old file is whole until the new one is. A link stays a link to the file that it leads to, and a file
 * keeps its mode.
 *
 * @throws {UsageError} where it cannot be written, or the place is no ordinary file
 */
export function writeWhole(file: string, content: Uint8Array | string): void {
  const target = behindLinks(file);
  const before = statSync(target, { throwIfNoEntry: false });
  if (before && !before.isFile()) throw new UsageError(({ files }) => files.noFile(file));
  const folder = dirname(target);
  const part = join(folder, `.${basename(target)}.${process.pid}.part`);
  try {
    writeThrough(part, content, before?.mode);
    renameSync(part, target);
  } catch (error) {
    rmSync(part, { force: true });
    throw new UsageError(({ files }) =>
      existsSync(folder)
        ? files.unwritable(file, (error as Error).message)
        : files.noFolder(file, folder),
    );
  }
}

/** The file that a name leads to; the name itself where nothing is there yet. */
function behindLinks(file: string): string {
  if (!lstatSync(file, { throwIfNoEntry: false })?.isSymbolicLink()) return file;
  return existsSync(file) ? realpathSync(file) : resolve(dirname(file), readlinkSync(file));
}

/** Writes a file and waits for the disk to have it. */
function writeThrough(file: string, content: Uint8Array | string, mode: number | undefined): void {
  const opened = openSync(file, "w", mode);
  try {
    writeFileSync(opened, content);
    if (mode !== undefined) fchmodSync(opened, mode & 0o7777);
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}

/** Runs something on a workbook file and puts the file's name before what is wrong with it. */
export async function named<T>(file: string, run: () => Promise<T>): Promise<T> {
  try {
    return await run();
  } catch (error) {
    throw usageError(error, file);
  }
}

/**
 * Whatever was thrown, as what is told of a file or of the whole command; what was not foreseen is told as
 * that, and never as a fault of the file alone.
 */
export function usageError(error: unknown, file?: string): UsageError {
  if (error instanceof UsageError) return error;
  const before = file === undefined ? "" : `${file}: `;
  if (error instanceof BookError)
    return new UsageError(({ told }) => `${before}${error.say(told)}`);
  const why = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return new UsageError(({ files }) => `${before}${files.unforeseen(why)}`);
}
