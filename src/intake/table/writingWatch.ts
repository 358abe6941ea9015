import { type DecimalEvidence, decimalWatch } from "../../quantities/reading/decimalMark";
import type { ExportRow } from "../columns/unpivot";
import { isMeasured } from "../words/fieldNames";
import { dateOrder, type OrderEvidence } from "../words/readDate";
import { readTitle, splitTitle } from "../words/readTitle";
import { type Sense, sensesOf } from "../words/senses";
import type { TitleWords } from "../words/synonyms";
import type { ExportColumn } from "../words/titles";
import { asAnswered } from "./evidence";
import type { ExportOptions } from "./exportOptions";
import type { Fact } from "./facts";
import type { Written } from "./written";

/** No export names more phases and combinations than this; what is over tells nothing new. */
const MAX_POSITIONS = 5000;

/** Watches how an export writes dates, phases and numbers, while its lines come one by one. */
export interface WritingWatch {
  /** The facts above a table, and then its columns. */
  readonly enter: (
    facts: readonly Fact[],
    columns: readonly ExportColumn[],
    /** What is understood of the words above it. */
    said?: readonly Written[],
  ) => void;
  readonly note: (row: ExportRow) => void;
  /** Every phase, pole and combination as written. */
  readonly positions: ReadonlySet<string>;
  readonly decimal: () => DecimalEvidence;
  readonly dates: () => OrderEvidence;
}

/** @param words of titles besides the trade's English ones */
export const writingWatch = (
  words: TitleWords,
  { decimal, dateOrder: answered }: ExportOptions,
): WritingWatch => {
  const marks = decimalWatch();
  const beside = besideWatch();
  const positions = new Set<string>();
  /** Each day as written, and the first line that has it. */
  const days = new Map<string, number>();
  let line = 0;
  let lastDay = "";
  let columns: { measured: readonly number[]; date: number; position: number } = {
    measured: [],
    date: -1,
    position: -1,
  };
  const noteDay = (text: string) => {
    if (text === lastDay) return;
    lastDay = text;
    const day = text.slice(0, 40).split(/[ T]/, 1)[0] ?? "";
    if (!days.has(day)) days.set(day, line);
  };
  const dates = () =>
    answered
      ? asAnswered(answered, ({ intake }) => intake.seen.first[answered])
      : dateOrder(days.keys(), (index) => [...days.values()][index] ?? 0);
  return {
    positions,
    enter(facts, entered, said = []) {
      columns = watchedIn(entered);
      beside.enter(entered);
      for (const text of textsOf(said, "date")) noteDay(text);
      for (const text of textsOf(said, "position")) positions.add(text);
      for (const fact of facts) {
        const { field = "" } = readTitle(fact.key, undefined, words);
        line = fact.line;
        if (field === "date") noteDay(fact.value);
        if (field === "position") positions.add(fact.value);
        if (isMeasured(field)) marks.note(fact.value, line);
      }
    },
    note({ line: now, cells }) {
      line = now;
      const { measured, date, position } = columns;
      if (date >= 0) noteDay(cells[date] ?? "");
      if (position >= 0 && positions.size < MAX_POSITIONS) positions.add(cells[position] ?? "");
      for (const index of measured) {
        const text = cells[index];
        if (text !== undefined && text !== "") marks.note(text, line);
      }
      if (!marks.isProved()) beside.note(cells, line);
    },
    decimal: () =>
      decimal
        ? {
            mark: decimal,
            isOpen: false,
            evidence: ({ intake: { decimals }, quantities: { marks } }) =>
              decimals.set(marks[decimal]),
          }
        : settled(marks.evidence(), beside.evidence(), dates()),
    dates,
  };
};

/** The decimal mark by the readings; where these leave it open, by numbers beside them, or by the days, as only where the month comes first a point is all that is written. */
const settled = (
  own: DecimalEvidence,
  beside: DecimalEvidence | undefined,
  { value, confidence }: OrderEvidence,
): DecimalEvidence => {
  if (!own.isOpen || own.isContradicted) return own;
  if (beside?.mark) return beside;
  return value === "month-first" && confidence === "certain"
    ? {
        mark: ".",
        isOpen: false,
        evidence: ({ intake: { decimals }, quantities: { marks } }) => decimals.byDays(marks["."]),
      }
    : own;
};

/** Whether a title is of a figure that readings are compared with or come to; others, as of a version, are written in ways of their own. */
const isWorkedOut = (title: string): boolean => {
  const { senses } = sensesOf(title);
  return splitTitle(title).unit !== undefined || COMPARED.some((sense) => senses.has(sense));
};
const COMPARED: readonly Sense[] = [
  ...(["error", "deviation", "limit", "minimum", "maximum", "required", "expected"] as const),
  ...(["mean", "corrected", "polarization", "absorption"] as const),
];

/** Numbers with a sign or without, and nothing else. */
const NUMBER = /^[-+]?\d+(?:[.,]\d+)?$/;

/** Watches the columns that no reading is taken from, such as errors and limits: what is all numbers there shows the decimal mark as well. */
const besideWatch = () => {
  const watched = new Map<number, ReturnType<typeof decimalWatch>>();
  const all: ReturnType<typeof decimalWatch>[] = [];
  return {
    enter(columns: readonly ExportColumn[]): void {
      watched.clear();
      for (const { index, field, title } of columns) {
        if (field !== undefined || !isWorkedOut(title)) continue;
        const watch = decimalWatch();
        watched.set(index, watch);
        all.push(watch);
      }
    },
    note(cells: readonly string[], line: number): void {
      for (const [index, watch] of watched) {
        const text = cells[index] ?? "";
        if (text === "") continue;
        if (NUMBER.test(text)) watch.note(text, line);
        else {
          watched.delete(index);
          all.splice(all.indexOf(watch), 1);
        }
      }
    },
    /** Undefined where the columns show none, or not the same. */
    evidence(): DecimalEvidence | undefined {
      const found = all.map((watch) => watch.evidence());
      const proved = found.filter(({ mark }) => mark !== undefined);
      const isSame = proved.every(({ mark }) => mark === proved[0]?.mark);
      return isSame && !found.some(({ isContradicted }) => isContradicted) ? proved[0] : undefined;
    },
  };
};

const textsOf = (said: readonly Written[], wanted: string) =>
  said.flatMap(({ field, text }) => (field === wanted ? text : []));

/** The columns in which dates, phases and numbers are looked for. */
const watchedIn = (columns: readonly ExportColumn[]) => {
  const indexOf = (wanted: string) => columns.find(({ field }) => field === wanted)?.index ?? -1;
  return {
    measured: columns
      .filter(({ field, unit }) => unit !== undefined || isMeasured(field ?? ""))
      .map(({ index }) => index),
    date: indexOf("date"),
    position: indexOf("position"),
  };
};
