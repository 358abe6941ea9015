import type { Finding } from "../check/findings/finding";
import type { Messages } from "../messages/messages";
import { groupBy } from "../quantities/groupedBy";
import type { Unit } from "../quantities/units";
import type { Correction } from "../sheets/kept/surveyAnswers";
import type { Snapshot } from "../sheets/snapshot";
import type { Basis } from "../standards/criterion";
import type { Block, Entry, Survey } from "./find/block";
import { SURVEY_RULES } from "./rules";
import { compare, resultOf } from "./rules/judge";
import type { SurveyContext } from "./rules/rule";
import { surveyBook } from "./surveyBook";
import { tellOnce } from "./tellOnce";
import type { Concept } from "./words/words";

/** Rated voltages of switchgear that the check knows of, kV. */
export const RATED_RANGE = [0.4, 52] as const;

/** What no cell of a workbook says and the check goes by. */
export interface SurveyAnswers {
  /** Rated voltage, kV, within {@link RATED_RANGE}. */
  readonly ratedkV?: number;
  readonly basis?: Basis;
  /** What a person has said of cells. */
  readonly corrections?: readonly Correction[];
}

/** One table as it was recognised, for people and programs. */
export interface SurveyBlock {
  readonly sheet: string;
  readonly range: string;
  readonly kind: string;
  readonly kinds: readonly string[];
  readonly panels: readonly string[];
  readonly readings: number;
  /** Units of the readings, the most frequent first. */
  readonly units: readonly Unit[];
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
    open: number;
    inconclusive: number;
    notRequired: number;
  };
}

/** How many readings came to what. */
const countsOf = (context: SurveyContext): SurveyReport["counts"] => {
  const counts = { pass: 0, fail: 0, missing: 0, open: 0, inconclusive: 0, notRequired: 0 };
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

const unitsOf = (entries: readonly Entry[]): Unit[] => {
  const times = new Map<Unit, number>();
  for (const { cell, unit } of entries)
    if (cell && unit) times.set(unit, (times.get(unit) ?? 0) + 1);
  return [...times].sort(([, one], [, other]) => other - one).map(([unit]) => unit);
};

const blockOf = (
  { sheet, range, kinds, panels, entries, recognisedBy: { titles, units, heading } }: Block,
  text: Messages["survey"],
): SurveyBlock => ({
  sheet,
  range,
  kind: kinds[0] ?? "",
  kinds,
  panels,
  readings: entries.filter(({ cell }) => cell !== undefined).length,
  units: unitsOf(entries),
  evidence: text.recognisedBy(titles, units, heading),
});

/** A part of a recognised table that can be put right: a column, and what it was taken for. */
export interface SurveyPart {
  /** Where its title stands. */
  readonly address: string;
  readonly title: string;
  readonly concept?: Concept;
}

/** A table as it was recognised, with its parts. */
export interface RecognisedBlock extends SurveyBlock {
  /** Address of the line of its titles. */
  readonly head: string;
  readonly parts: readonly SurveyPart[];
}

const partsOf = (block: Block, text: Messages["survey"]): RecognisedBlock => {
  const { columns, span, address, entries } = block;
  const head = span[0] - 1;
  const read = new Set(entries.map(({ column }) => column.at));
  return {
    ...blockOf(block, text),
    head: address(head, columns[0]?.at ?? 0),
    parts: columns.map(({ at, title, concept }) => {
      const is = read.has(at) ? "reading" : concept;
      return { address: address(head, at), title, ...(is ? { concept: is } : {}) };
    }),
  };
};

/**
 * The tables of records that are recognised in a workbook of somebody's own, before anything is judged.
 *
 * @param corrections what a person has said of cells
 */
export const recognise = (
  snapshot: Snapshot,
  corrections: readonly Correction[],
  text: Messages["survey"],
): RecognisedBlock[] =>
  surveyBook(snapshot, "day-first", corrections).blocks.map((block) => partsOf(block, text));

/** A workbook surveyed and checked by every rule, the worst findings first. */
export function surveyed(
  snapshot: Snapshot,
  today: number,
  answers: SurveyAnswers,
  text: Messages["survey"],
): { readonly context: SurveyContext; readonly findings: readonly Finding[] } {
  const survey: Survey = surveyBook(
    snapshot,
    answers.basis === "NETA" ? "month-first" : "day-first",
    answers.corrections,
  );
  const context: SurveyContext = { survey, today, ...answers, text };
  const found = SURVEY_RULES.flatMap(({ find }) => find(context));
  const findings = groupBy(
    found,
    ({ rule, sheet, address, message }) => `${rule} ${sheet}!${address} ${message}`,
  )
    // What is wrong with a cell that counts for several readings is told once.
    .flatMap(([first]) => first ?? [])
    .sort((one, other) => WEIGHTS.indexOf(one.weight) - WEIGHTS.indexOf(other.weight));
  return { context, findings };
}

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
  const { context, findings } = surveyed(snapshot, today, answers, text);
  return {
    blocks: context.survey.blocks.map((block) => blockOf(block, text)),
    findings: tellOnce(findings, context.survey, text),
    questions: [
      ...(answers.ratedkV === undefined ? [text.rated] : []),
      ...(answers.basis === undefined ? [text.basis] : []),
    ],
    counts: countsOf(context),
  };
}
