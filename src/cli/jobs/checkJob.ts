import { basename } from "node:path";
import type { Report } from "../../check/check";
import { compareReports } from "../../check/compare/compare";
import { openBook } from "../../intake/openBook";
import { commandLineFor } from "../../messages/commandLine";
import { messagesFor } from "../../messages/messages";
import type { Earlier } from "../../report/ChangesSince";
import { markFile } from "../../xlsx/writeMarks";
import { readBytes, UsageError, usageError, writeWhole } from "../files/files";
import { saveBook } from "../files/saveBook";
import { openBookAs } from "../openBookAs";
import { findingList } from "../screen/findingList";
import { matrixTable } from "../screen/matrixTable";
import { PAGE } from "../screen/screen";
import { comparedWords, summaryLines } from "../screen/terminal";
import { checkFile, checkOpened, fileReport } from "./checkFile";
import type { Checked, Job } from "./job";
import { isForeign, surveyJob } from "./surveyJob";

/** Checks one workbook; whatever is wrong with the file, or goes wrong with it, is part of the answer. */
export async function runJob(job: Job): Promise<Checked> {
  const { book, against, day } = job;
  try {
    const { snapshot } = await openBookAs(book, job);
    const opened = openBook(snapshot);
    if (isForeign(opened)) return await surveyJob(job, snapshot);
    if (job.addColumns ?? job.removeColumns)
      throw new UsageError(({ survey }) => `${book}: ${survey.onlyOwn}`);
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

function reportWords({ book, whole, all = false, screen = PAGE }: Job, report: Report): string {
  const text = commandLineFor("en").check;
  const summary = summaryLines(report, text);
  return whole
    ? [
        book,
        matrixTable(report, text, screen),
        "",
        findingList(report.findings, text, screen, { titleOf: ruleTitle(report), all }),
        "",
        ...summary,
      ].join("\n")
    : `${book}: ${summary.join(" ")}`;
}

/** What a rule is about; a rule that a later version knows goes by its id. */
export const ruleTitle =
  ({ context }: Report) =>
  (rule: string): string =>
    (context.text.rules as Readonly<Record<string, { readonly title: string } | undefined>>)[rule]
      ?.title ?? rule;

/** Writes the page and the copies that a job asks for; what was written, in words. */
async function writeOutputs(
  { book, html, marked, sheet, punch }: Job,
  report: Report,
  earlier: Earlier | undefined,
): Promise<string[]> {
  const messages = messagesFor("en");
  const text = commandLineFor("en").check;
  const told: string[] = [];
  if (html) {
    // The chart library and React load only when a page is asked for.
    const { reportHtml } = await import("../../report/html");
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
    const { withFindings } = await import("../../xlsx/writeFindings");
    saveBook(sheet, await withFindings(readBytes(book), report));
    told.push(text.sheet(sheet));
  }
  if (punch) {
    const { withPunchList } = await import("../../xlsx/writeFindings");
    saveBook(punch, await withPunchList(readBytes(book), report));
    told.push(text.punch(punch));
  }
  return told;
}
