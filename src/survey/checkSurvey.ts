import type { Finding } from "../check/finding";
import type { Messages } from "../messages/messages";
import type { Snapshot } from "../sheets/snapshot";
import type { Basis } from "../standards/criterion";
import type { Survey } from "./block";
import { SURVEY_RULES } from "./rules";
import { compare, resultOf } from "./rules/judge";
import type { SurveyContext } from "./rules/rule";
import { surveyBook } from "./surveyBook";

/** What no cell of a workbook says and the check goes by. */
export interface SurveyAnswers {
  /** Rated voltage, kV. */
  readonly ratedkV?: number;
  readonly basis?: Basis;
}

/** One table as it was recognised, for people and programs. */
export interface SurveyBlock {
  readonly sheet: string;
  readonly range: string;
  readonly kind: string;
  readonly kinds: readonly string[];
  readonly panels: readonly string[];
  readonly readings: number;
  readonly evidence: string;
}

/** What the check of a workbook without a lineup comes to. */
export interface SurveyReport {
  readonly blocks: readonly SurveyBlock[];
  readonly findings: readonly Finding[];
  readonly questions: readonly string[];
  readonly counts: {
    pass: number;
    fail: number;
    missing: number;
    inconclusive: number;
    notRequired: number;
  };
}

/** How many readings came to what. */
const countsOf = (context: SurveyContext): SurveyReport["counts"] => {
  const counts = { pass: 0, fail: 0, missing: 0, inconclusive: 0, notRequired: 0 };
  for (const { entries } of context.survey.blocks)
    for (const entry of entries) {
      const compared = compare(entry, context);
      if (entry.cell === undefined) counts.missing += 1;
      else if (compared.some(({ verdict }) => verdict === "Fail") || resultOf(entry) === "Fail")
        counts.fail += 1;
      else if (compared.some(({ verdict }) => verdict === "Pass")) counts.pass += 1;
      else counts.inconclusive += 1;
    }
  return counts;
};

const WEIGHTS = ["stop", "query", "note"];

/**
 * Checks a workbook that keeps its records in layouts of its own, by what it states itself, and where it
 * states nothing by the criteria of the basis.
 *
 * @param today the day of the check, as a serial number
 */
export function checkSurvey(
  snapshot: Snapshot,
  today: number,
  answers: SurveyAnswers,
  text: Messages["survey"],
): SurveyReport {
  const survey: Survey = surveyBook(
    snapshot,
    answers.basis === "NETA" ? "month-first" : "day-first",
  );
  const context: SurveyContext = { survey, today, ...answers, text };
  const findings = SURVEY_RULES.flatMap(({ find }) => find(context)).sort(
    (one, other) => WEIGHTS.indexOf(one.weight) - WEIGHTS.indexOf(other.weight),
  );
  return {
    blocks: survey.blocks.map(({ sheet, range, kinds, panels, entries, evidence }) => ({
      sheet,
      range,
      kind: kinds[0] ?? "",
      kinds,
      panels,
      readings: entries.filter(({ cell }) => cell !== undefined).length,
      evidence,
    })),
    findings,
    questions: [
      ...(answers.ratedkV === undefined ? [text.rated] : []),
      ...(answers.basis === undefined ? [text.basis] : []),
    ],
    counts: countsOf(context),
  };
}
