import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { type CommandLineText, commandLineFor } from "../messages/commandLine";
import { BookError } from "../sheets/bookError";

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
    return readFileSync(file);
  } catch (error) {
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

/** Writes a file whole or not at all: beside its place first, then renamed into it. */
export function writeWhole(file: string, content: Uint8Array | string): void {
  const folder = dirname(file);
  const part = join(folder, `.${basename(file)}.${process.pid}.part`);
  try {
    writeFileSync(part, content);
    renameSync(part, file);
  } catch (error) {
    rmSync(part, { force: true });
    throw new UsageError(({ files }) =>
      existsSync(folder)
        ? files.unwritable(file, (error as Error).message)
        : files.noFolder(file, folder),
    );
  }
}

/** Runs something on a workbook file and puts the file's name before what is wrong with it. */
export async function named<T>(file: string, run: () => Promise<T>): Promise<T> {
  try {
    return await run();
  } catch (error) {
    if (error instanceof BookError) throw new UsageError(() => `${file}: ${error.message}`);
    throw error;
  }
}
