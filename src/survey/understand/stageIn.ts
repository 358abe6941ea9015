import type { Stage, SurveyColumn } from "../find/block";
import { hasWord } from "../words/sheetWords";

/** Whether words speak of before or after the withstand test; the last that do count. */
export const stageIn = (texts: readonly string[]): Stage | undefined => {
  for (const text of texts.toReversed()) {
    const [before, after] = [hasWord(text, "before"), hasWord(text, "after")];
    if (before !== after) return before ? "before" : "after";
  }
  return undefined;
};

/** Whether words speak of closing or of opening. */
export const operationIn = (texts: readonly string[]): SurveyColumn["operation"] => {
  const text = texts.join(" ");
  const [closing, opening] = [hasWord(text, "closing"), hasWord(text, "opening")];
  return closing === opening ? undefined : closing ? "closing" : "opening";
};
