import { quoted } from "../../quantities/quoted";
import type { DecimalMark } from "../../quantities/reading/readNumber";
import type { Unit } from "../../quantities/units";
import type { Decoded } from "../text/decode";
import { fieldName } from "../words/fieldNames";
import type { DateOrder } from "../words/readDate";
import { readTitle } from "../words/readTitle";
import type { titleWords } from "../words/synonyms";
import { numbered, titleKey, titleKeys } from "../words/titleKeys";
import type { ExportColumn } from "../words/titles";
import { asAnswered, type Evidence } from "./evidence";
import type { ExportOptions, Shape } from "./exportOptions";
import type { Block } from "./facts";
import type { Skipped } from "./layout";

/** What an inspection found in a file, each with its evidence and how sure it is. */
export interface Inspection {
  readonly encoding?: Decoded["encoding"];
  readonly delimiter: Evidence<string>;
  readonly decimal: Evidence<DecimalMark | undefined>;
  readonly dateOrder: Evidence<DateOrder | undefined>;
  readonly blocks: readonly InspectedBlock[];
  /** Lines that are no readings, and what they are taken for: the first thousand of them. */
  readonly skipped: readonly Skipped[];
  readonly skippedCount: number;
}

export interface InspectedBlock {
  readonly title?: string;
  /** Line of the titles. */
  readonly titles: Evidence<number>;
  readonly titleLines: Evidence<1 | 2 | 3>;
  readonly units: Evidence<boolean>;
  readonly shape: Evidence<Shape>;
  /** The unit of its readings, where a heading over it tells it and their titles do not. */
  readonly unit?: Unit;
  /** As they stand in the file. */
  readonly columns: readonly InspectedColumn[];
  readonly lines: number;
}

export interface InspectedColumn {
  readonly title: string;
  /** What it is called by: its title, with its number where others before it have the same (`R#2`). */
  readonly name: string;
  readonly unit?: string;
  readonly field: Evidence<string | undefined>;
  readonly says?: ExportColumn["says"];
  readonly alike?: string;
  readonly below?: true;
}

/** What an inspection says of a block. */
export const inspected = (
  { title, head, facts: _facts }: Block,
  lines: number,
  shape: Evidence<Shape>,
  options: ExportOptions,
  words: ReturnType<typeof titleWords>,
): InspectedBlock => {
  const likely = (value: number) => (value >= 3 ? "certain" : "likely");
  const given = new Set(Object.keys(options.mapping ?? {}).map(titleKey));
  const keys = titleKeys(head.columns.map(({ title }) => title));
  const names = numbered(head.columns.map(({ title }) => title));
  const isGiven = (at: number) => keys[at]?.some((key) => given.has(key)) ?? false;
  return {
    title,
    lines,
    shape,
    titles: {
      value: head.line,
      evidence: ({ intake }) => intake.seen.titlesOn(head.line, head.recognised),
      confidence: likely(head.recognised),
    },
    titleLines: {
      value: head.lines,
      evidence: ({ intake: { seen } }) =>
        head.lines === 1 ? seen.oneLine : seen.grouped(head.lines),
      confidence: head.lines > 1 ? "likely" : "certain",
    },
    units: {
      value: head.units,
      evidence: ({ intake: { seen } }) => (head.units ? seen.unitRow : seen.noUnitRow),
      confidence: "certain",
    },
    columns: head.columns.map(
      (column, at): InspectedColumn => ({
        title: column.title,
        name: names[at] ?? column.title,
        unit: column.unit,
        says: column.says,
        alike: column.alike,
        below: column.below,
        field: held(column, fieldSeen(column, isGiven(at), words)),
      }),
    ),
  };
};

/** With a word where the name is written once. */
const held = (
  { below }: ExportColumn,
  field: Evidence<string | undefined>,
): Evidence<string | undefined> =>
  below
    ? {
        ...field,
        evidence: (text) => text.intake.seen.below(field.evidence(text)),
        confidence: "likely",
      }
    : field;

const fieldSeen = (
  { title, field, says, alike, listed }: ExportColumn,
  given: boolean,
  words: ReturnType<typeof titleWords>,
): Evidence<string | undefined> => {
  if (given) return asAnswered(field, (told) => fieldName(field, told));
  if (alike !== undefined)
    return {
      value: undefined,
      evidence: ({ intake }) => intake.seen.alike(quoted(alike)),
      confidence: "open",
    };
  if (field === undefined)
    return { value: undefined, evidence: ({ intake }) => intake.seen.unknown, confidence: "open" };
  if (listed)
    return {
      value: field,
      evidence: (told) => told.intake.seen.instruments(fieldName(field, told)),
      confidence: "likely",
    };
  if (field === "part" && readTitle(title, undefined, words).field === "position")
    return {
      value: field,
      evidence: (told) => told.intake.seen.noPhases(fieldName(field, told)),
      confidence: "likely",
    };
  const english = readTitle(title, undefined, () => undefined).field === field;
  return {
    value: field,
    evidence: (told) => {
      const { seen } = told.intake;
      const name = fieldName(field, told);
      return says
        ? seen.byTitleOf(
            name,
            [says.position, says.stage].filter((one) => one !== undefined),
          )
        : seen.byTitle(name, english ? "title" : words(title) ? "language" : "words");
    },
    confidence: english && !says ? "certain" : "likely",
  };
};
