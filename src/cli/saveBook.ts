import { extname } from "node:path";
import { endingOf } from "../xlsx/endingOf";
import { UsageError, writeWhole } from "./files";

const WHAT: Readonly<Record<string, string>> = {
  ".xlsx": "it has no macros",
  ".xlsm": "it has macros",
  ".xltx": "it is a template",
  ".xltm": "it is a template with macros",
};

/**
 * Writes a workbook file under the name that was given.
 *
 * @throws {UsageError} where Excel would not open it under that name, and says which it would
 */
export function saveBook(out: string, file: Uint8Array): void {
  const [given, right] = [extname(out).toLowerCase(), endingOf(file)];
  if (right !== undefined && given !== right && given in WHAT)
    throw new UsageError(
      `${out}: Excel opens this workbook only under a name that ends in ${right} (${WHAT[right]}); nothing was written`,
    );
  writeWhole(out, file);
}
