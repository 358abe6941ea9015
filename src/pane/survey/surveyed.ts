import type { Messages } from "../../messages/messages";
import { today } from "../../quantities/today";
import type { SurveyAnswers, SurveyBlock, SurveyReport } from "../../survey/checkSurvey";
import { checkSurvey, recognise } from "../../survey/checkSurvey";
import { type GuessedAnswers, guessAnswers } from "../../survey/guessAnswers";
import { type ResultColumns, resultColumns } from "../../survey/results/resultColumns";
import type { Watch, WorkbookHost } from "../host";

/** A workbook in layouts of its own, as it was recognised. */
export interface Surveyed {
  readonly blocks: readonly SurveyBlock[];
  readonly guesses: GuessedAnswers;
}

/** Reads every sheet of the workbook and looks for records. */
export async function surveyWorkbook(host: WorkbookHost, watch: Watch): Promise<Surveyed> {
  const snapshot = await host.read(watch, "every");
  return { blocks: recognise(snapshot), guesses: guessAnswers(snapshot) };
}

/** Reads every sheet of the workbook and works out the result columns for its tables. */
export async function columnsFor(
  host: WorkbookHost,
  watch: Watch,
  answers: SurveyAnswers,
  text: Messages["survey"],
): Promise<ResultColumns> {
  return resultColumns(await host.read(watch, "every"), today(), answers, text);
}

/** Reads every sheet of the workbook and checks it as it stands now. */
export async function checkWorkbook(
  host: WorkbookHost,
  watch: Watch,
  answers: SurveyAnswers,
  text: Messages["survey"],
): Promise<SurveyReport> {
  return checkSurvey(await host.read(watch, "every"), today(), answers, text);
}
