import { basename } from "node:path";
import type { Report } from "../check/check";
import { compareReports } from "../check/compare";
import { openBook } from "../intake/openBook";
import { commandLineFor } from "../messages/commandLine";
import { messagesFor } from "../messages/messages";
import type { Earlier } from "../report/ChangesSince";
import { markFile } from "../xlsx/writeMarks";
import { checkFile, checkOpened, fileReport } from "./checkFile";
import { readBytes, type UsageError, usageError, writeWhole } from "./files";
import type { Checked, Job } from "./job";
import { openBookAs } from "./openBookAs";
import { saveBook } from "./saveBook";
import { isForeign, surveyJob } from "./surveyJob";
import { comparedWords, findingTable, matrixTable, summaryLine } from "./terminal";

/** Findings of one rule that are told in the terminal. */
const MAX_OF_RULE = 12;

/** Checks one workbook; whatever is wrong with the file, or goes wrong with it, is part of the answer. */
export async function runJob(job: Job): Promise<Checked> {
  const { book, against, day } = job;
  try {
    const { snapshot } = await openBookAs(book, job);
    const opened = openBook(snapshot);
    if (isForeign(opened)) return await surveyJob(job, snapshot);
    const report = checkOpened(book, opened, day, job.final);
    const compared = against
      ? compareReports(await checkFile(against, () => {}, day, job), report)
      : undefined;
    const earlier = compared && against ? { file: against, compared } : undefined;
    return {
      report: {
        ...fileReport(book, report),
        ...(earlier ? { against: { file: earlier.file, ...earlier.compared } } : {}),
      },
      told: [
        reportWords(job, report),
        ...(earlier
          ? [comparedWords(earlier.file, earlier.compared, commandLineFor("en").check)]
          : []),
        ...(await writeOutputs(job, report, earlier)),
      ].join("\n\n"),
    };
  } catch (error) {
    return failed(book, usageError(error));
  }
}

/** A workbook that could not be checked, as part of the answer. */
export const failed = (book: string, { message }: UsageError): Checked => ({
  report: { file: book, error: message.replace(`${book}: `, "") },
  told: "",
});

function reportWords({ book, whole }: Job, report: Report): string {
  const text = commandLineFor("en").check;
  const summary = summaryLine(report, text);
  return whole
    ? [
        book,
        matrixTable(report, text),
        findingTable(report.findings, text, MAX_OF_RULE),
        summary,
      ].join("\n")
    : `${book}: ${summary}`;
}

/** Writes the page and the copies that a job asks for; what was written, in words. */
async function writeOutputs(
  { book, html, marked, sheet }: Job,
  report: Report,
  earlier: Earlier | undefined,
): Promise<string[]> {
  const messages = messagesFor("en");
  const text = commandLineFor("en").check;
  const told: string[] = [];
  if (html) {
    // The chart library and React load only when a page is asked for.
    const { reportHtml } = await import("../report/html");
    const made = new Date().toISOString().slice(0, 10);
    const since = earlier && { ...earlier, file: basename(earlier.file) };
    writeWhole(html, reportHtml(basename(book), made, report, messages, since));
    told.push(text.page(html));
  }
  if (marked) {
    saveBook(marked, await markFile(readBytes(book), report.findings));
    told.push(text.marked(marked));
  }
  if (sheet) {
    const { withFindings } = await import("../xlsx/writeFindings");
    saveBook(sheet, await withFindings(readBytes(book), report));
    told.push(text.sheet(sheet));
  }
  return told;
}
