import { BookError } from "../sheets/bookError";

/** What Excel's error codes mean for the person at the workbook, and what would be right. */
const WORDS: Readonly<Record<string, string>> = {
  InvalidOperationInCellEditMode:
    "a cell is being typed in; finish it with Enter, or leave it with Esc, and do this again",
  AccessDenied:
    "Excel does not allow the change: the sheet, the workbook or the file is protected or open for reading only; take the protection off and do this again",
  ItemNotFound:
    "a sheet, a table or a format has gone in the meantime; read the workbook and do this again",
  InvalidReference: "the workbook was changed in the meantime; read it and do this again",
  RequestPayloadSizeLimitExceeded:
    "more was sent at once than Excel takes; nothing of it was written",
  ResponsePayloadSizeLimitExceeded: "more was asked for at once than Excel gives",
  ActivityLimitReached: "Excel is busy; wait a moment and do this again",
  Timeout: "Excel did not answer in time; do this again",
  ConnectionFailure: "the connection to Excel is lost; when it is back, do this again",
  WriteNotSupportedWhenModalDialogOpen: "a window of Excel's is open; close it and do this again",
};

/** Code of an error of Excel's client; undefined for any other error. */
export const excelCode = (error: unknown): string | undefined =>
  typeof error === "object" && error !== null && "code" in error && "debugInfo" in error
    ? String((error as { code: unknown }).code)
    : undefined;

/**
 * Runs work in Excel, and puts Excel's errors into words.
 *
 * @param what what was being done, e.g. `Building the records`
 * @throws {BookError} in place of an error of Excel's; others go through, a stop by the user among them
 */
export async function inWords<T>(what: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const code = excelCode(error);
    if (code === undefined) throw error;
    const why = WORDS[code] ?? `Excel answered: ${(error as Error).message}`;
    throw new BookError(`${what} did not come to its end: ${why}.`, { cause: error });
  }
}
