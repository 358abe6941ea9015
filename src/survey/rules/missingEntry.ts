import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, Label, SurveyColumn } from "../find/block";
import type { Cell } from "../read/cells";
import type { Concept } from "../words/words";
import { findingAt, type SurveyContext, type SurveyRule } from "./rule";

/** What proves a reading and has to stand in every line, once it stands in most. */
const PROVING: readonly Concept[] = [
  "result",
  "date",
  "by",
  "instrument",
  "voltage",
  "current",
  "duration",
  "temperature",
  "air",
  "humidity",
  "discharge",
  "leakage",
  "primary",
  "ratio",
  "corrected",
  "factor",
  "limit",
  "minimum",
  "maximum",
  "required",
];

/** What every test has, whatever is measured in it. */
const OF_ALL: readonly (Concept | undefined)[] = ["result", "date", "by", "instrument"];

/** Columns that are filled here and there. */
const LOOSE: readonly (Concept | undefined)[] = ["remarks", "name", "part", "position", "panel"];

/** Whether a column asks the same of every line: answers or numbers stand in it, and in all lines but one. */
const isAsked = (block: Block, column: SurveyColumn): boolean => {
  if (column.concept !== undefined) return PROVING.includes(column.concept);
  if (LOOSE.includes(column.concept) || column.computed) return false;
  const cells = block.lines.map((line) => block.at(line, column.at));
  const filled = cells.filter((cell) => cell !== undefined);
  const words = new Set(filled.map(({ text }) => text));
  const isAnswer = column.numbers || words.size <= 2;
  return isAnswer && filled.length >= 6 && filled.length >= cells.length - 1;
};

const isBlank = (cell: Cell | undefined): boolean =>
  cell === undefined || (cell.says === undefined && /^[-–—?.…]+$/.test(cell.text));

const inBlock = (block: Block, { text }: SurveyContext): Finding[] =>
  block.columns
    .filter((column) => isAsked(block, column))
    .flatMap((column) => {
      const taken = block.entries.filter(
        ({ cell, column: { stage } }) =>
          cell !== undefined &&
          (stage === undefined || column.stage === undefined || stage === column.stage),
      );
      // What one kind of test has no use for is blank in all its lines; who did it and when counts for all.
      const isOfAll = OF_ALL.includes(column.concept);
      return groupBy(taken, ({ kind, unit }) => (isOfAll ? kind : `${kind} ${unit}`)).flatMap(
        (entries) => {
          const lines = groupBy(entries, ({ line }) => String(line)).flatMap(
            ([first]) => first ?? [],
          );
          const blank = lines.filter(({ line }) => isBlank(block.at(line, column.at)));
          const filled = lines.length - blank.length;
          if (lines.length < 4 || filled < lines.length * 0.75) return [];
          return blank.map((entry) =>
            findingAt(
              "survey-blank",
              "query",
              block,
              entry,
              block.address(entry.line, column.at),
              text.missingEntry(column.title, filled, lines.length),
              {
                column: column.title,
              },
            ),
          );
        },
      );
    });

/** Whether labels are one each of two forms of one layout, with the value of one of them. */
const areTwins = (labels: readonly Label[]): boolean => {
  const [one, other] = labels;
  return (
    labels.length === 2 &&
    one?.address === other?.address &&
    one?.sheet !== other?.sheet &&
    labels.some(({ value }) => value !== undefined)
  );
};

/** Labels that forms of one kind all have, and one of them blank. */
const inForms = ({ survey, text }: SurveyContext): Finding[] =>
  groupBy(
    survey.labels.filter(({ sheet }) => survey.blocks.some((block) => block.sheet === sheet)),
    ({ concept, text: label }) => `${concept} ${label}`,
  ).flatMap((labels) => {
    const [first] = labels;
    if (!first || !["by", "tester", "date", "instrument"].includes(first.concept)) return [];
    const blank = labels.filter(({ value }) => value === undefined);
    const isTold = labels.some(({ text: label }) => /[:：]$/.test(label));
    const alone = labels.length === 1 && isTold;
    const filled = labels.length - blank.length;
    const isUsual = filled >= 2 && blank.length <= labels.length * 0.4;
    if (blank.length === 0 || (!alone && !isUsual && !areTwins(labels))) return [];
    return blank.map(
      ({ sheet, valueAddress, text: label }): Finding => ({
        rule: "survey-blank-label",
        weight: alone ? "note" : "query",
        sheet,
        address: valueAddress,
        message: text.missingLabel(label),
      }),
    );
  });

/** Date, tester, instrument or result that is blank in one line or form and filled in the others. */
export const missingEntry: SurveyRule = {
  id: "survey-blank",
  find: (context) => [
    ...context.survey.blocks.flatMap((block) => inBlock(block, context)),
    ...inForms(context),
  ],
};
