import { type DecimalEvidence, decimalWatch } from "../../quantities/reading/decimalMark";
import type { ExportRow } from "../columns/unpivot";
import { isMeasured } from "../words/fieldNames";
import { dateOrder, type OrderEvidence } from "../words/readDate";
import { readTitle } from "../words/readTitle";
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
  return {
    positions,
    enter(facts, entered, said = []) {
      columns = watchedIn(entered);
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
    },
    decimal: () =>
      decimal
        ? {
            mark: decimal,
            isOpen: false,
            evidence: ({ intake: { decimals }, quantities: { marks } }) =>
              decimals.set(marks[decimal]),
          }
        : marks.evidence(),
    dates: () =>
      answered
        ? asAnswered(answered, ({ intake }) => intake.seen.first[answered])
        : dateOrder(days.keys(), (index) => [...days.values()][index] ?? 0),
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
