import type { Messages } from "../../messages/messages";
import { today } from "../../quantities/today";
import { type Remembered, rememberedOf } from "../../sheets/kept/remembered";
import type { Correction } from "../../sheets/kept/surveyAnswers";
import type { RecognisedBlock, SurveyAnswers, SurveyReport } from "../../survey/checkSurvey";
import { checkSurvey, recognise } from "../../survey/checkSurvey";
import { type GuessedAnswers, guessAnswers } from "../../survey/guessAnswers";
import { type ResultColumns, resultColumns } from "../../survey/results/resultColumns";
import type { Watch, WorkbookHost } from "../host";

/** A workbook in layouts of its own, as it was recognised. */
export interface Surveyed {
  readonly blocks: readonly RecognisedBlock[];
  readonly guesses: GuessedAnswers;
  /** What the workbook remembers, the answers of before among it. */
  readonly remembered: Remembered;
}

/** Reads every sheet of the workbook and looks for records. */
export async function surveyWorkbook(
  host: WorkbookHost,
  watch: Watch,
  text: Messages["survey"],
  corrections?: readonly Correction[],
): Promise<Surveyed> {
  const snapshot = await host.read(watch, { sheets: "every" });
  const remembered = rememberedOf(snapshot);
  return {
    blocks: recognise(snapshot, corrections ?? remembered.survey?.corrections ?? [], text),
    guesses: guessAnswers(snapshot),
    remembered,
  };
}

/** Keeps the answers in the workbook, which is written to in any case. */
export const keepAnswers = (
  host: WorkbookHost,
  watch: Watch,
  remembered: Remembered,
  answers: SurveyAnswers,
): Promise<void> =>
  host.change({ remembered: { ...remembered, survey: { on: today(), ...answers } } }, watch);

/** Reads every sheet of the workbook and works out the result columns for its tables. */
export async function columnsFor(
  host: WorkbookHost,
  watch: Watch,
  answers: SurveyAnswers,
  text: Messages["survey"],
): Promise<ResultColumns> {
  return resultColumns(await host.read(watch, { sheets: "every" }), today(), answers, text);
}

/** Reads every sheet of the workbook and checks it as it stands now. */
export async function checkWorkbook(
  host: WorkbookHost,
  watch: Watch,
  answers: SurveyAnswers,
  text: Messages["survey"],
): Promise<SurveyReport> {
  return checkSurvey(await host.read(watch, { sheets: "every" }), today(), answers, text);
}
