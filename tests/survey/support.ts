import { parseA1Range } from "@borgar/fx";
import type { Finding } from "../../src/check/findings/finding";
import { messagesFor } from "../../src/messages/messages";
import { daySerial } from "../../src/quantities/dates";
import type { CellValue } from "../../src/records/kind";
import type { SheetSnapshot } from "../../src/sheets/snapshot";
import { checkSurvey, type SurveyAnswers, type SurveyReport } from "../../src/survey/checkSurvey";
import type { Entry } from "../../src/survey/find/block";
import { surveyBook } from "../../src/survey/surveyBook";

/** The day of the check in these tests; every workbook in them is invented. */
export const TODAY = daySerial("2031-06-02");

interface Drawn {
  readonly value: CellValue;
  readonly formula?: string;
}

const NUMBER = /^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/;

/** A plain number is a number, and text behind an apostrophe, as in a spreadsheet. */
const typedAs = (text: string): CellValue => {
  if (text === "") return null;
  if (text.startsWith("'")) return text.slice(1);
  return NUMBER.test(text) ? Number(text) : text;
};

/** `=B2*2 -> 12` is a formula with what it was worked out to. */
const cellOf = (drawn: string): Drawn => {
  const text = drawn.trim();
  if (!text.startsWith("=")) return { value: typedAs(text) };
  const [formula = "", value = ""] = text.slice(1).split("->");
  return { formula: formula.trim(), value: typedAs(value.trim()) };
};

/**
 * A sheet drawn line by line, its cells parted by bars.
 *
 * @param merges ranges such as `B1:D1` whose cells are joined
 */
export function drawSheet(
  name: string,
  drawing: string | readonly string[],
  merges: readonly string[] = [],
): SheetSnapshot {
  const lines =
    typeof drawing === "string" ? drawing.replace(/^\n|\n\s*$/g, "").split("\n") : drawing;
  const cells = lines.map((line) => line.split("|").map(cellOf));
  return {
    name,
    tables: [],
    cells: {
      rowCount: cells.length,
      columnCount: Math.max(...cells.map((row) => row.length)),
      cell: (row, column) => cells[row]?.[column]?.value ?? null,
      formula: (row, column) => cells[row]?.[column]?.formula,
      merges: merges.map((range) => {
        const { top, left, bottom, right } = parseA1Range(range) ?? {};
        return { top: top ?? 0, left: left ?? 0, bottom: bottom ?? 0, right: right ?? 0 };
      }),
    },
  };
}

/** What the survey finds on one sheet. */
export const surveyOf = (drawing: string | readonly string[], merges?: readonly string[]) =>
  surveyBook({ sheets: [drawSheet("Sheet", drawing, merges)] });

/** The same as lines of words: kind, panel, position, stage or operation, reading, address. */
export const readingsOf = (drawing: string | readonly string[], merges?: readonly string[]) =>
  surveyOf(drawing, merges).blocks.flatMap(({ entries }) => entries.map(inWords));

const inWords = ({ kind, panel, position, stage, operation, cell, unit, address }: Entry): string =>
  [
    kind,
    panel,
    position,
    ...(stage ? [stage] : []),
    ...(operation ? [operation] : []),
    `${cell?.number ?? cell?.text ?? "-"}${unit ? ` ${unit}` : ""}`,
    address,
  ].join("; ");

/** What no cell says, in most of these tests. */
export const ANSWERS: SurveyAnswers = { ratedkV: 15, basis: "NETA" };

/** The check of sheets, with what no cell of them says. */
export const checked = (
  sheets: readonly SheetSnapshot[],
  answers: SurveyAnswers = ANSWERS,
): SurveyReport => checkSurvey({ sheets }, TODAY, answers, messagesFor("en").survey);

/** What is told of sheets, as rule and place. */
export const told = (sheets: readonly SheetSnapshot[], answers?: SurveyAnswers): string[] =>
  checked(sheets, answers).findings.map(inShort).toSorted();

export const inShort = ({ rule, sheet, address }: Finding): string =>
  `${rule} ${sheet === "Sheet" ? "" : `${sheet}!`}${address}`;
