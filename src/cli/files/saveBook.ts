import { extname } from "node:path";
import { commandLineFor } from "../../messages/commandLine";
import { shown } from "../../quantities/shown";
import { endingOf, isSigned } from "../../xlsx/describeFile";
import { UsageError, writeWhole } from "./files";

const ENDINGS: ReadonlySet<string> = new Set([".xlsx", ".xlsm", ".xltx", ".xltm"]);

/**
 * Writes a workbook file under the name that was given.
 *
 * @throws {UsageError} where Excel would not open it under that name, and says which it would
 */
export function saveBook(out: string, file: Uint8Array): void {
  const [given, right] = [extname(out).toLowerCase(), endingOf(file)];
  if (right !== undefined && given !== right && ENDINGS.has(given))
    throw new UsageError(({ files }) => files.ending(out, right, files.endings[right] ?? ""));
  writeWhole(out, file);
  if (isSigned(file)) process.stderr.write(`${shown(commandLineFor("en").files.signed(out))}\n`);
}
