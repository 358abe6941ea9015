import { memoizeText } from "../words/memoizeText";
import { anyWord } from "../words/phrases";
import { plainWords } from "../words/plainWords";
import { namesPosition } from "../words/readPosition";
import { readStage } from "../words/readStage";
import { readTitle } from "../words/readTitle";
import { type ExportColumn, isUnitRow, type TitleReading, titlesOf } from "../words/titles";
import type { TextRow } from "./delimited";

/** A fact above a table: `Temperature,21.4 °C`, `# Stage: before`, or a remark. */
export interface Fact {
  readonly line: number;
  readonly key: string;
  readonly value: string;
}

/** The titles of a table: where they stand, and the columns under them. */
export interface Head {
  readonly line: number;
  /** Rows of titles, and whether a row of units stands under them. */
  readonly lines: 1 | 2;
  readonly units: boolean;
  readonly columns: readonly ExportColumn[];
  /** Fields and phases that were recognised. */
  readonly recognised: number;
}

/** One test of a file: the facts above it, and its titles. */
export interface Block {
  readonly title?: string;
  readonly facts: readonly Fact[];
  readonly head: Head;
}

/** A line that is no reading, and what it was taken for. */
export interface Skipped {
  readonly line: number;
  readonly reason: string;
}

export type Part =
  | { readonly block: Block; readonly row?: undefined; readonly skipped?: undefined }
  | {
      readonly row: TextRow;
      /** The line of the same table above that says the same, save a running number and the time of day; the first of them. */
      readonly like?: number;
      readonly block?: undefined;
      readonly skipped?: undefined;
    }
  | { readonly skipped: Skipped; readonly block?: undefined; readonly row?: undefined };

/** What the user has said about where the titles stand. */
export interface LayoutOptions extends TitleReading {
  /** The line of the first row of titles. */
  readonly titles?: number;
  readonly titleLines?: 1 | 2;
  readonly units?: boolean;
  /** Lines to be taken for readings, whatever they look like. */
  readonly keep?: ReadonlySet<number>;
}

/** The first titles stand within so many rows. */
export const LOOK_ROWS = 120;
/** So many lines are remembered, to know them when they come again. */
export const MAX_PLAIN = 50_000;
/** More columns than a spreadsheet has are no table. */
export const MAX_COLUMNS = 16_384;

/** Fields that say where a reading belongs, so that a row of them between readings begins something new. */
const PLACING = new Set(["object", "circuit", "section", "part", "position", "stage", "test"]);
const SUMMARY = new RegExp(`^${anyWord(({ summaries }) => summaries)}\\b[\\s:.=]*$`, "iu");
/** The same with what it is of: `Total leakage`, `Average of poles`. */
const SUMMARY_OF = new RegExp(`^${anyWord(({ summariesOf }) => summariesOf)}\\s+\\p{L}{2}`, "iu");
const CLOSING = new RegExp(`^${anyWord(({ footers }) => footers)}`, "i");
const NOTES = new RegExp(`^${anyWord(({ notes }) => notes)}\\b`, "i");
const SUBHEAD = new RegExp(`^(${anyWord(({ headings }) => headings)})\\s+(.+)$`, "i");

/** A heading with its number: `2. Contact resistance`, `3) Joints`, `4.1 Busbar joints`. */
const NUMBERED = /^\d{1,2}(?:\.\d{1,2})*(?:[.)]\s*\p{L}|\s+\p{L}{4,}\s+\p{L})/u;

const filledOf = (cells: readonly string[]) => cells.filter((cell) => cell !== "");
/** A number or the beginning of one, and no time such as the 60 s of a title. */
const isNumberish = (cell: string) => {
  const sign = cell.charCodeAt(0);
  // Of letters, most of what stands in cells, nothing more need be asked.
  if (sign >= 0x41 && sign <= 0x7a) return false;
  return /^[-+<>≤≥~]?\s*[.,]?\d/.test(cell) && !/^\d+ ?(?:s|sec|min)\b/i.test(cell);
};

/**
 * The titles at a row: of one line or of two, whichever says more. Undefined where the rows are none.
 */
export const headAt = (
  rows: readonly TextRow[],
  options: LayoutOptions,
  least = 2,
): Head | undefined => {
  const [first, second, third] = rows;
  // A remark such as "# Made up for a trial" is no title, whatever words stand in it.
  if (!first || /^#\s*\S/.test(first.cells[0] ?? "")) return undefined;
  const one = options.titleLines === 2 ? undefined : headOf([first], second, options);
  const two =
    options.titleLines === 1 ||
    !second ||
    !(
      options.titleLines === 2 ||
      (!isHeading(first) && countFilled(second.cells) > 1 && mayBeTitles(second.cells))
    )
      ? undefined
      : headOf([first, second], third, options);
  const best =
    one && two
      ? two.recognised > one.recognised && two.recognised > lowerAlone(second, third, options)
        ? two
        : one
      : (one ?? two);
  return best && best.recognised >= least ? best : undefined;
};

/** A text alone in the first column stands over the whole table, and groups no columns of it. */
const isHeading = ({ cells }: TextRow): boolean => cells[0] !== "" && countFilled(cells) === 1;

const lowerAlone = (
  second: TextRow | undefined,
  third: TextRow | undefined,
  options: LayoutOptions,
) => (second ? headOf([second], third, options).recognised : 0);

const headOf = (
  lines: readonly [TextRow] | readonly [TextRow, TextRow],
  below: TextRow | undefined,
  options: LayoutOptions,
): Head => {
  const units = options.units ?? isUnitRow(below?.cells ?? []);
  const columns = titlesOf(
    lines.map(({ cells }) => cells),
    units ? (below?.cells ?? []) : [],
    options,
  );
  const fields = new Set(columns.flatMap(({ field, says }) => (says ? [] : (field ?? []))));
  const says = new Set(
    columns.flatMap(({ field, says }) => (says ? JSON.stringify([field, says]) : [])),
  );
  return {
    line: lines[0].line,
    lines: lines.length as 1 | 2,
    units,
    columns,
    // A lone phase among titles may be anything.
    recognised: fields.size + (says.size > 1 ? says.size : 0),
  };
};

/** No row of readings: no numbers, but for the poles where all three are named by them. */
const mayBeTitles = (cells: readonly string[]): boolean => {
  let [filled, poles, others] = [0, 0, 0];
  for (const cell of cells) {
    if (cell === "") continue;
    if (/^[123]$/.test(cell)) poles += 1;
    else if (isNumberish(cell)) return false;
    else others += 1;
    filled += 1;
  }
  if (poles === 0) return filled >= 1;
  const known = (cell: string) => cell === "" || readTitle(cell).field !== undefined;
  return (
    poles % 3 === 0 && (others === 0 || cells.every((cell) => known(cell) || /^[123]$/.test(cell)))
  );
};

/** The best titles among the first rows. */
export const firstHead = (rows: readonly TextRow[], options: LayoutOptions): Head | undefined => {
  const heads = rows.flatMap((row, at) => {
    if (options.titles === undefined ? !mayBeTitles(row.cells) : row.line !== options.titles)
      return [];
    const head = headAt(rows.slice(at, at + 3), options, options.titles === undefined ? 2 : 0);
    return head ? [{ head, filled: countFilled(row.cells) }] : [];
  });
  const most = Math.max(0, ...heads.map(({ head }) => head.recognised));
  // The first that is no mere line of facts; a file of several tests may recognise more of a later one.
  return heads.find(
    ({ head, filled }) =>
      head.recognised === most ||
      (head.recognised > 2 && head.recognised * 2 > most && isConvincing(head, filled)),
  )?.head;
};

/**
 * Parts a file into its tests and their rows, and tells which lines are none: titles repeated on every
 * page, sums and averages, notes. Where a line between readings may say that others follow, what was
 * said above counts no longer.
 *
 * @param rows the file's rows, read one by one
 * @param head the file's first titles
 */
export function* layout(
  rows: Iterable<TextRow>,
  head: Head,
  options: LayoutOptions,
): Generator<Part> {
  const all = ahead(rows);
  const above: TextRow[] = [];
  for (let row = all.next(); row; row = all.next()) {
    if (row.line >= head.line) {
      all.back(row);
      break;
    }
    above.push(row);
  }
  let now: Block = { facts: above.flatMap(factOf), head, title: titleOf(above) };
  const shared = sharedFacts(above);
  yield { block: now };
  for (let at = 0; at < head.lines + (head.units ? 1 : 0); at++) all.next();

  const summary = memoizeText(isSummary);
  const titles = new Map([[head, headText(head)]]);
  const short = head.columns.length < 3;
  let pending: TextRow[] = [];
  let gap = false;
  /** Lines that are readings, whatever stands around them. */
  const plain = new Map<string, number>();
  for (let row = all.next(); row; row = all.next()) {
    const { line } = row;
    const said = saidIn(row, now.head);
    const like = pending.length > 0 || said === undefined ? undefined : plain.get(said);
    if (like !== undefined) {
      gap = false;
      yield { row, like };
      continue;
    }
    const kept = options.keep?.has(line) ?? false;
    if (countFilled(row.cells) === 0) {
      gap = true;
      continue;
    }
    const { cells } = wholeRow(row);
    const filled = countFilled(cells);
    const plainly = kept || row.unclosed === true;
    if (!plainly && filled > 1 && mayBeTitles(row.cells) && !isUnder(now.head, row.cells)) {
      const next = [row, all.peek(0), all.peek(1)].filter((one) => one !== undefined);
      const found = headAt(next, { ...options, titleLines: undefined, units: undefined });
      if (found && isConvincing(found, filled)) {
        const facts = pending.flatMap(factOf);
        const same = (titles.get(now.head) ?? headText(now.head)) === headText(found);
        for (let at = 1; at < found.lines + (found.units ? 1 : 0); at++) all.next();
        if (same && !facts.some(isPlacing(options))) {
          yield* pending.map(noted);
          yield { skipped: { line, reason: "the titles again" } };
        } else {
          now = { facts: [...shared, ...facts], head: found, title: titleOf(pending) };
          plain.clear();
          titles.set(found, headText(found));
          yield { block: now };
        }
        pending = [];
        gap = false;
        continue;
      }
    }
    if (!plainly && looksLikeFact(cells, filled, short, gap || pending.length > 0, options)) {
      pending.push(row);
      continue;
    }
    if (pending.length > 0) {
      const under = underNotes(now, pending, options);
      if (under) {
        now = under;
        plain.clear();
        yield { block: now };
      } else yield* pending.map(noted);
      pending = [];
    }
    gap = false;
    const sum = plainly ? undefined : summaryIn(cells, now.head.columns, summary);
    if (sum) yield { skipped: { line, reason: `${sum} of readings, none itself` } };
    else {
      if (said !== undefined && filled > 2 && plain.size < MAX_PLAIN && !mayBeTitles(cells))
        plain.set(said, line);
      yield { row: wholeRow(row) };
    }
  }
  yield* pending.map(noted);
}

/** A line's text without its time of day, and without the running number that it begins with, which says nothing. */
const saidIn = (row: TextRow, { columns }: Head): string | undefined => {
  const { text } = row;
  if (text === undefined) return undefined;
  const time = columns.find(({ field }) => field === "time");
  const [from, to] = (time && row.span?.(time.index)) ?? [0, 0];
  const untimed = from === to ? text : text.slice(0, from) + text.slice(to);
  return columns.some(({ index, field }) => index === 0 && field !== undefined)
    ? untimed
    : unnumbered(untimed);
};

const unnumbered = (text: string): string => {
  let at = 0;
  while (isDigit(text.charCodeAt(at))) at += 1;
  return at === 0 ? text : text.slice(at);
};

const isDigit = (sign: number) => sign >= 0x30 && sign <= 0x39;

/** A row of readings with what is written for it in cells that reach down from rows above. */
export const wholeRow = (row: TextRow): TextRow => {
  const { joined } = row;
  return joined
    ? {
        line: row.line,
        cells: row.cells.map((cell, at) => (cell === "" ? (joined.get(at) ?? "") : cell)),
      }
    : row;
};

const noted = ({ line, cells }: TextRow): Part => ({
  skipped: { line, reason: `a note: ${filledOf(cells).join(" ").slice(0, 60)}` },
});

const countFilled = (cells: readonly string[]): number => {
  let filled = 0;
  for (let at = 0; at < cells.length; at++) if (cells[at] !== "") filled += 1;
  return filled;
};

/** A line without a reading yet, whose words would be titles: it names a stage and a phase where its table does. */
const isUnder = ({ columns }: Head, cells: readonly string[]): boolean => {
  const cellOf = (wanted: string) =>
    cells[columns.find(({ field, says }) => !says && field === wanted)?.index ?? -1] ?? "";
  return readStage(cellOf("stage")) !== undefined && namesPosition(cellOf("position"));
};

/** Of a later row of titles, at least half is recognised, and a phase alone is not enough. */
const isConvincing = ({ columns, recognised, lines }: Head, filled: number): boolean =>
  recognised >= 2 &&
  columns.some(({ field, says }) => field !== undefined && !says) &&
  (lines === 2 || columns.filter(({ field }) => field !== undefined).length * 2 >= filled) &&
  (filled > 2 || columns.length <= 3);

const headText = ({ columns }: Head) => columns.map(({ title }) => plainWords(title)).join("|");

/** A line above the table or between its rows, as key and value. */
export const factOf = ({ line, cells }: TextRow): Fact[] => {
  const [first = "", ...rest] = filledOf(cells);
  const text = first.replace(/^#+\s*/, "");
  if (text === "") return [];
  const pairs = pairsIn([text, ...rest]);
  if (pairs) return pairs.map(([key, value]) => ({ line, key, value }));
  if (rest.length > 0) return [{ line, key: withoutColon(text), value: rest.join(" ") }];
  const at = text.indexOf(":");
  return [
    at > 0
      ? { line, key: text.slice(0, at).trim(), value: text.slice(at + 1).trim() }
      : { line, key: text, value: "" },
  ];
};

const withoutColon = (text: string) => text.replace(/\s*:$/, "");

/** Several facts side by side, each under a word that is known; undefined where they are not. */
const pairsIn = (cells: readonly string[]): readonly (readonly [string, string])[] | undefined => {
  if (cells.length < 4 || cells.length % 2 > 0) return undefined;
  const pairs = cells.flatMap((value, at) =>
    at % 2 > 0 ? [[withoutColon(cells[at - 1] ?? ""), value] as const] : [],
  );
  return pairs.every(([key]) => readTitle(key).field !== undefined) ? pairs : undefined;
};

const titleOf = (rows: readonly TextRow[]): string | undefined =>
  rows
    .filter(({ cells }) => countFilled(cells) === 1)
    .map(({ cells }) => (filledOf(cells)[0] ?? "").replace(/^#+\s*/, ""))
    .filter((text) => text !== "")
    .at(-1);

/** Facts of the whole file: those that a blank line parts from the facts of its first test. */
const sharedFacts = (above: readonly TextRow[]): Fact[] => {
  let last = above.length - 1;
  while (last >= 0 && countFilled(above[last]?.cells ?? []) === 0) last -= 1;
  for (let at = last; at >= 0; at--)
    if (countFilled(above[at]?.cells ?? []) === 0) return above.slice(0, at).flatMap(factOf);
  return [];
};

const isPlacing = (options: LayoutOptions) => (fact: Fact) =>
  fact.value !== "" && PLACING.has(readTitle(fact.key, undefined, options.words).field ?? "");

const looksLikeFact = (
  cells: readonly string[],
  filled: number,
  short: boolean,
  apart: boolean,
  options: LayoutOptions,
): boolean => {
  if (filled > 2) return cells[0]?.startsWith("#") ?? false;
  const [first = "", second] = filledOf(cells);
  if (first.startsWith("#") || CLOSING.test(first)) return true;
  if (second === undefined)
    return (!isNumberish(first) || NUMBERED.test(first)) && (!short || first.includes(":"));
  return (
    !short &&
    (first.endsWith(":") ||
      (apart && readTitle(first, undefined, options.words).field !== undefined))
  );
};

/** What the rows under some notes belong to: undefined where they go on as before. */
const underNotes = (
  now: Block,
  notes: readonly TextRow[],
  options: LayoutOptions,
): Block | undefined => {
  const facts = notes.flatMap((row) => {
    const [only, other] = filledOf(row.cells);
    if (other === undefined && readStage(only?.split(/\s/, 1)[0] ?? ""))
      return [{ line: row.line, key: "Stage", value: only ?? "" }];
    const [, key, value] = (other === undefined && SUBHEAD.exec(only ?? "")) || [];
    return key !== undefined && value !== undefined && !value.includes(":")
      ? [{ line: row.line, key, value }]
      : factOf(row);
  });
  const placing = facts.filter(isPlacing(options));
  if (placing.length > 0)
    return { ...now, facts: [...now.facts, ...placing], title: titleOf(notes) ?? now.title };
  const named = (fact: Fact) => isPlacing(options)(fact);
  const unclear = facts.some(
    ({ key, value }) => value === "" && !CLOSING.test(key) && !NOTES.test(key),
  );
  // A heading that is not understood may name another panel than the one above.
  return unclear && now.facts.some(named) && notes.some(({ cells }) => !cells[0]?.startsWith("#"))
    ? { ...now, facts: now.facts.filter((fact) => !named(fact)), title: titleOf(notes) }
    : undefined;
};

/** The word of a sum or an average, where one stands in the place of a panel, part or phase. */
const summaryIn = (
  cells: readonly string[],
  columns: readonly ExportColumn[],
  isSummary: (word: string) => boolean,
): string | undefined => {
  let at = 0;
  while (at < cells.length && cells[at] === "") at += 1;
  const first = cells[at];
  if (first !== undefined && isSummary(first)) return first;
  for (const { index, field } of columns)
    if (field !== undefined && index > at && PLACING.has(field) && field !== "test") {
      const cell = cells[index];
      if (cell !== undefined && cell.length > 2 && isSummary(cell)) return cell;
    }
  return undefined;
};

const isSummary = (word: string): boolean =>
  word.length < 40 && (SUMMARY.test(word) || SUMMARY_OF.test(word));

/** An iterable read with a look at what comes next. */
const ahead = <T>(items: Iterable<T>) => {
  const from = items[Symbol.iterator]();
  const queue: T[] = [];
  const pull = (): boolean => {
    const { done, value } = from.next();
    if (!done) queue.push(value);
    return !done;
  };
  return {
    next: (): T | undefined => {
      if (queue.length > 0) return queue.shift();
      const { done, value } = from.next();
      return done ? undefined : value;
    },
    peek: (index: number): T | undefined => {
      while (queue.length <= index) if (!pull()) return undefined;
      return queue[index];
    },
    back: (item: T) => queue.unshift(item),
  };
};
