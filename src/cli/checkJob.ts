import { basename } from "node:path";
import { compareReports } from "../check/compare";
import { markFile } from "../xlsx/writeMarks";
import { checkFile, type FileReport, fileReport } from "./checkCommand";
import { readBytes, UsageError, writeWhole } from "./files";
import { refuseLoss } from "./refuseLoss";
import { saveBook } from "./saveBook";
import { comparedWords, findingTable, matrixTable, summaryLine } from "./terminal";

/** The check of one workbook and what is to be written of it. */
export interface Job {
  readonly book: string;
  readonly html?: string;
  readonly marked?: string;
  readonly sheet?: string;
  readonly against?: string;
  /** How own layouts are read, and the lineup where the workbook does not tell it. */
  readonly map?: string;
  readonly lineup?: string;
  /** Whether the written copies may lack what saving loses. */
  readonly acceptLoss?: boolean;
  /** Cores on which no other workbook is checked meanwhile. */
  readonly spare?: number;
  readonly day: number;
  /** Whether the matrix and the findings are told, or the summary alone. */
  readonly whole: boolean;
}

/** What a job came to; plain data, so that a worker can send it. */
export interface Checked {
  readonly report: FileReport;
  readonly told: string;
}

/** Checks one workbook; what is wrong with the file is part of the answer. */
export async function runJob(job: Job): Promise<Checked> {
  const { book, html, marked, sheet, against, day, whole, map, lineup, spare } = job;
  try {
    const said = { map, lineup, spare };
    const report = await checkFile(book, () => {}, day, said);
    const compared = against
      ? compareReports(await checkFile(against, () => {}, day, said), report)
      : undefined;
    if (marked || sheet) await refuseLoss(book, readBytes(book), job.acceptLoss);
    const told = [
      whole
        ? [book, matrixTable(report), findingTable(report.findings, 12), summaryLine(report)].join(
            "\n",
          )
        : `${book}: ${summaryLine(report)}`,
    ];
    if (compared) told.push(comparedWords(against ?? "", compared));
    if (html) {
      // The chart library and React load only when a page is asked for.
      const { reportHtml } = await import("../report/html");
      const made = new Date().toISOString().slice(0, 10);
      const earlier = compared && { file: basename(against ?? ""), compared };
      writeWhole(html, reportHtml(basename(book), made, report, earlier));
      told.push(`Page: ${html}`);
    }
    if (marked) {
      saveBook(marked, await markFile(readBytes(book), report.findings));
      told.push(`Marked copy: ${marked}`);
    }
    if (sheet) {
      const { withFindings } = await import("../xlsx/writeFindings");
      saveBook(sheet, await withFindings(readBytes(book), report));
      told.push(`Copy with findings: ${sheet}`);
    }
    return {
      report: {
        ...fileReport(book, report),
        ...(compared && against ? { against: { file: against, ...compared } } : {}),
      },
      told: told.join("\n\n"),
    };
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    return { report: { file: book, error: error.message.replace(`${book}: `, "") }, told: "" };
  }
}
