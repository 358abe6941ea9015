import { commandLineFor } from "../../messages/commandLine";
import { messagesFor } from "../../messages/messages";
import type { SurveyAnswersKept } from "../../sheets/kept/surveyAnswers";
import type { RecordBook } from "../../sheets/recordBook";
import type { Snapshot } from "../../sheets/snapshot";
import { checkSurvey, type SurveyReport } from "../../survey/checkSurvey";
import { type ResultColumns, resultColumns } from "../../survey/results/resultColumns";
import { withBeside, withoutBeside } from "../../xlsx/writeBeside";
import { markFile } from "../../xlsx/writeMarks";
import { answersFor, keepBeside, withAnswers } from "../ask/keptAnswers";
import { readBytes, UsageError } from "../files/files";
import { saveBook } from "../files/saveBook";
import { findingList } from "../screen/findingList";
import { PAGE } from "../screen/screen";
import type { Checked, Job } from "./job";

/** Whether a workbook keeps its records in layouts of its own, without a lineup and without a map. */
export const isForeign = ({ lineup, tables, snapshot }: RecordBook): boolean =>
  lineup === undefined && tables.length === 0 && (snapshot.maps ?? []).length === 0;

/** Checks a workbook in somebody's own layout, and writes its marked copy where one is asked for. */
export async function surveyJob(job: Job, snapshot: Snapshot): Promise<Checked> {
  const { book, day, rated, basis, whole, marked, addColumns, removeColumns } = job;
  const needing = (["html", "sheet", "punch", "against"] as const).filter((option) => job[option]);
  if (needing.length > 0)
    throw new UsageError(
      ({ survey }) => `${book}: ${survey.needsLineup(needing.map((option) => `--${option}`))}`,
    );
  const { survey } = messagesFor("en");
  const { answers, kept } = answersFor(book, snapshot, { ratedkV: rated, basis });
  const report = checkSurvey(snapshot, day, answers, survey);
  if (report.blocks.length === 0) throw new UsageError(() => `${book}: ${survey.noBlocks}`);
  const told = [whole ? words(job, report) : `${book}: ${summary(report)}`];
  if (marked) {
    const copy = await markFile(readBytes(book), report.findings);
    saveBook(marked, await withAnswers(copy, snapshot, answers, day));
    told.push(commandLineFor("en").check.marked(marked));
  }
  if (addColumns) {
    const columns = resultColumns(snapshot, day, answers, survey);
    const copy = await withBeside(readBytes(book), columns.beside);
    saveBook(addColumns, await withAnswers(copy, snapshot, answers, day));
    told.push(columnWords(addColumns, columns));
  }
  if (removeColumns) {
    const { file, tables } = await withoutBeside(readBytes(book));
    saveBook(removeColumns, file);
    told.push(commandLineFor("en").survey.columnsRemoved(removeColumns, tables));
  }
  if (kept) told.push(commandLineFor("en").survey.answeredBefore(kept.from, inWords(kept.answers)));
  const file = job.quiet ? undefined : keepBeside(book, snapshot, answers, day);
  if (file) told.push(commandLineFor("en").survey.keptIn(file));
  return { report: { file: book, ...report }, told: told.join("\n\n") };
}

/** Answers as the options that give them. */
const inWords = ({ ratedkV, basis }: SurveyAnswersKept): string =>
  [
    ...(ratedkV === undefined ? [] : [`--rated ${ratedkV}`]),
    ...(basis === undefined ? [] : [`--basis ${basis}`]),
  ].join(" ");

const columnWords = (file: string, { beside, without }: ResultColumns): string => {
  const { survey } = commandLineFor("en");
  return [
    survey.columnsAdded(file, beside.length),
    ...without.map(({ sheet, range, why }) => survey.columnsLeftOut(sheet, range, why)),
  ].join("\n");
};

const summary = ({ blocks, findings }: SurveyReport): string =>
  commandLineFor("en").survey.summary(
    blocks.length,
    blocks.reduce((sum, { readings }) => sum + readings, 0),
    findings.filter(({ weight }) => weight === "stop").length,
    findings.filter(({ weight }) => weight === "query").length,
  );

const words = ({ book, all = false, screen = PAGE }: Job, report: SurveyReport): string => {
  const { survey, check } = commandLineFor("en");
  return [
    book,
    ...report.blocks.map(({ sheet, range, kinds, panels, readings }) =>
      survey.block(sheet, range, kinds, panels.length, readings),
    ),
    "",
    findingList(report.findings, check, screen, { titleOf: survey.cause, all }),
    "",
    summary(report),
    ...report.questions,
  ].join("\n");
};
