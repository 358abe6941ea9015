import type { Told } from "../../messages/told";
import { BookError } from "../../sheets/bookError";

/** Code of an error of Excel's client; undefined for any other error. */
export const excelCode = (error: unknown): string | undefined =>
  typeof error === "object" && error !== null && "code" in error && "debugInfo" in error
    ? String((error as { code: unknown }).code)
    : undefined;

/**
 * Runs work in Excel, and puts Excel's errors into words.
 *
 * @param what what was being done, e.g. `({ build }) => build`
 * @throws {BookError} in place of an error of Excel's; others go through, a stop by the user among them
 */
export async function inWords<T>(
  what: (work: Told["excel"]["work"]) => string,
  work: () => Promise<T>,
): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const code = excelCode(error);
    if (code === undefined) throw error;
    throw new BookError(
      ({ excel }) => excel.notEnded(what(excel.work), whyNot(code, error as Error, excel)),
      { cause: error },
    );
  }
}

/** What an error of Excel's means for the person at the workbook, and what would be right. */
const whyNot = (code: string, { message }: Error, { codes, answered }: Told["excel"]): string => {
  const known: Readonly<Record<string, string>> = codes;
  return known[code] ?? answered(message);
};
