import { basename, extname } from "node:path";
import { check, type Report } from "../../check/check";
import type { Compared } from "../../check/compare/compare";
import { type RecordRow, recordRows } from "../../check/progress/recordRows";
import { openBook } from "../../intake/openBook";
import { messagesFor } from "../../messages/messages";
import { today } from "../../quantities/today";
import type { RecordBook } from "../../sheets/recordBook";
import type { SurveyReport } from "../../survey/checkSurvey";
import { UsageError } from "../files/files";
import { type BookOptions, openBookAs } from "../openBookAs";

/** Checks one workbook file; never writes to it. Says when reading is done and judging begins. */
export async function checkFile(
  file: string,
  judging: () => void = () => {},
  day = today(),
  said: BookOptions & { readonly final?: boolean } = {},
): Promise<Report> {
  const { snapshot } = await openBookAs(file, said);
  judging();
  return checkOpened(file, openBook(snapshot), day, said.final);
}

/** Checks a workbook that was opened; finally for hand-over. */
export function checkOpened(
  file: string,
  book: RecordBook,
  day: number,
  isFinal?: boolean,
): Report {
  const checked = check(book, day, messagesFor("en").findings, isFinal);
  if (!checked.ok) throw new UsageError(() => `${file}: ${checked.reason}`);
  return checked.report;
}

/** One file of `check --json`. */
export interface FileReport {
  readonly file: string;
  readonly error?: string;
  readonly counts?: Report["counts"];
  /** Every record row as it was judged. */
  readonly rows?: readonly RecordRow[];
  readonly findings?: Report["findings"];
  /** Of a workbook in somebody's own layout: the tables that were recognised. */
  readonly blocks?: SurveyReport["blocks"];
  /** What no cell says and a verdict needs. */
  readonly questions?: SurveyReport["questions"];
  /** Compared with an earlier revision. */
  readonly against?: Compared & { readonly file: string };
}

export const fileReport = (file: string, report: Report): FileReport => ({
  file,
  counts: report.counts,
  rows: recordRows(report.context),
  findings: report.findings,
});

const BOOK = /\.xls[xm]$/i;

/** The name of an output for one workbook; where several are checked, with the workbook's name in it, and a copy with its ending. */
export function perBook(out: string, file: string, several: boolean): string {
  if (!several) return out;
  const ending = BOOK.test(out) && BOOK.test(file) ? extname(file) : extname(out);
  return `${out.slice(0, out.length - extname(out).length)}-${basename(file).replace(BOOK, "")}${ending}`;
}
