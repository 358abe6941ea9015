import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { isAnswer } from "../cells/listWord";
import { ahead } from "../text/ahead";
import type { TextRow } from "../text/delimited";
import { countFilled, filledOf, wholeRow } from "../text/textCells";
import { speaksOfAll } from "../understand/blockFacts";
import { namesPlace } from "../understand/headedPlaces";
import {
  areMarked,
  type Block,
  bannerFacts,
  type Fact,
  headingsIn,
  isPlacing,
  looksLikeFact,
  sharedFacts,
  sharedRows,
  titleOf,
  underNotes,
} from "./facts";
import { isFactLine } from "./factsIn";
import {
  HEAD_ROWS,
  type Head,
  headAt,
  headText,
  isConvincing,
  isUnder,
  type LayoutOptions,
  mayBeHead,
  mayBeTitles,
} from "./head";
import { summaryReader } from "./summaries";
import { blockOfTest, type TestsBeside, testsBeside } from "./testsBeside";

/** A line that is no reading, and what it was taken for. */
export interface Skipped {
  readonly line: number;
  readonly reason: Said<Told>;
}

export type LayoutPart =
  | { readonly block: Block; readonly row?: undefined; readonly skipped?: undefined }
  | {
      readonly row: TextRow;
      /** The line of the same table above that says the same, save a running number and the time of day; the first of them. */
      readonly like?: number;
      readonly block?: undefined;
      readonly skipped?: undefined;
    }
  | { readonly skipped: Skipped; readonly block?: undefined; readonly row?: undefined };

/** So many lines are remembered, to know them when they come again. */
export const MAX_PLAIN = 50_000;
/** Where the reading of a file has come to. */
interface Reading {
  readonly all: ReturnType<typeof ahead<TextRow>>;
  readonly options: LayoutOptions;
  /** Facts of the whole file. */
  readonly shared: Block["facts"];
  /** Whether the file's tables are too narrow to tell a fact from a reading by its shape. */
  readonly isNarrow: boolean;
  readonly summaryIn: ReturnType<typeof summaryReader>;
  block: Block;
  /** Where each line names its own test: the column, and the blocks of the tests so far. */
  tests?: TestsBeside;
  /** Lines that may be notes, facts or headings, until the line that follows tells. */
  pending: TextRow[];
  /** Whether a blank line stands above. */
  gap: boolean;
  /** Lines that are readings, whatever stands around them, by what they say. */
  readonly plain: Map<string, number>;
}

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
): Generator<LayoutPart> {
  const all = ahead(rows);
  const above = rowsAbove(all, head);
  const reading: Reading = {
    all,
    options,
    shared: sharedFacts(above),
    isNarrow: head.columns.length < 3,
    summaryIn: summaryReader(),
    block: {
      facts: above.flatMap(bannerFacts),
      head,
      title: titleOf(above),
      headings: headingsIn(above),
      above: headingsIn(sharedRows(above)),
      notes: [],
      sample: [],
    },
    pending: [],
    gap: false,
    plain: new Map(),
  };
  for (let title = 0; title < head.lines + (head.units ? 1 : 0); title++) all.next();
  yield entered(reading, {
    ...reading.block,
    notes: notesBelow(all),
    sample: sampleOf(all, options),
  });
  for (let row = all.next(); row; row = all.next()) {
    const text = tellingText(row, reading);
    const like =
      reading.pending.length > 0 || text === undefined ? undefined : reading.plain.get(text);
    if (like !== undefined) {
      reading.gap = false;
      yield { row, like };
    } else if (countFilled(row.cells) === 0) reading.gap = true;
    else for (const part of partsAt(reading, row, text)) yield part;
  }
  yield* reading.pending.map(noted);
}

/** So many lines show what a table's columns hold. */
const SAMPLE = 40;
/** No line of facts has more cells. */
const WIDEST_FACTS = 8;

/** The next lines, up to where the titles of another table begin. */
const sampleOf = (all: Reading["all"], options: LayoutOptions): readonly (readonly string[])[] => {
  const sample: (readonly string[])[] = [];
  let isApart = false;
  // Lines that may be facts of the next table, such as `Panel:,J02`, are so where titles follow.
  let facts = 0;
  for (let at = 0; at < SAMPLE; at++) {
    const row = all.peek(at);
    if (row === undefined) break;
    const filled = areMarked(row.cells) ? 0 : countFilled(row.cells);
    if (filled < 2) {
      isApart = true;
      continue;
    }
    const isFact = filled <= WIDEST_FACTS && isFactLine(row.cells);
    if (isApart && !isFact && titlesAhead(all, at, filled, options))
      return sample.slice(0, sample.length - facts);
    sample.push(row.cells);
    facts = isFact ? facts + 1 : 0;
    isApart = isFact;
  }
  return sample;
};

/** The texts alone under the next lines that speak of all readings, where these lines are not too many. */
const notesBelow = (all: Reading["all"]): readonly string[] => {
  const notes: string[] = [];
  for (let at = 0; at < SAMPLE; at++) {
    const row = all.peek(at);
    if (row === undefined) break;
    const [only = "", second] = filledOf(row.cells);
    if (second === undefined && speaksOfAll(only)) notes.push(only);
    // What stands over further lines is theirs.
    else if (second !== undefined && notes.length > 0) return [];
  }
  return notes;
};

/** The titles that a line ahead is, where it can be nothing else. */
const titlesAhead = (
  all: Reading["all"],
  from: number,
  filled: number,
  options: LayoutOptions,
): Head | undefined => {
  const lines = Array.from({ length: HEAD_ROWS }, (_, at) => all.peek(from + at)).filter(
    (line) => line !== undefined,
  );
  if (lines[0] === undefined || !mayBeTitles(lines[0].cells)) return undefined;
  const head = headAt(lines, { ...options, titleLines: undefined, units: undefined });
  return head && isConvincing(head, filled) ? head : undefined;
};

const rowsAbove = (all: Reading["all"], head: Head): readonly TextRow[] => {
  const above: TextRow[] = [];
  for (let row = all.next(); row; row = all.next()) {
    if (row.line >= head.line) {
      all.back(row);
      break;
    }
    above.push(row);
  }
  return above;
};

/** What a line makes known: a block, a reading, lines that are none, or nothing yet. */
const partsAt = (
  reading: Reading,
  row: TextRow,
  text: string | undefined,
): readonly LayoutPart[] => {
  const { options, isNarrow, gap, pending, summaryIn, plain } = reading;
  const { cells } = wholeRow(row);
  const filled = countFilled(cells);
  const isReading = (options.keep?.has(row.line) ?? false) || row.unclosed === true;
  if (!isReading) {
    const titles = titlesAt(reading, row, filled);
    if (titles) return titles;
    if (looksLikeFact(cells, filled, isNarrow, gap || pending.length > 0, options)) {
      pending.push(row);
      return [];
    }
  }
  const notes = notesAbove(reading);
  const { columns } = reading.block.head;
  const summary = isReading ? undefined : summaryIn(cells, columns);
  if (summary) return [...notes, skippedAt(row.line, ({ intake }) => intake.seen.summary(summary))];
  if (text !== undefined && filled > 2 && plain.size < MAX_PLAIN && !mayBeTitles(cells))
    plain.set(text, row.line);
  const whole = wholeRow(row);
  return [...notes, ...testAt(reading, whole), { row: whole }];
};

/** The block of the test that a line names, where it is another than the line before named. */
const testAt = (reading: Reading, row: TextRow): readonly LayoutPart[] => {
  const { tests, all, options, block } = reading;
  if (tests === undefined) return [];
  const known = blockOfTest(tests, row, () => sampleOf(all, options));
  if (known === block) return [];
  reading.block = known;
  return [{ block: known }];
};

/** The titles that a line is: those of another block, or the same again. */
const titlesAt = (
  reading: Reading,
  row: TextRow,
  filled: number,
): readonly LayoutPart[] | undefined => {
  const { all, options, block, pending, shared } = reading;
  if (filled <= 1 || !mayBeHead(row, all.peek(0)) || isLineOf(block, row.cells)) return undefined;
  const lines = [row, ...Array.from({ length: HEAD_ROWS - 1 }, (_, at) => all.peek(at))].filter(
    (line) => line !== undefined,
  );
  const head = headAt(lines, { ...options, titleLines: undefined, units: undefined });
  if (!head || !isConvincing(head, filled)) return undefined;
  for (let title = 1; title < head.lines + (head.units ? 1 : 0); title++) all.next();
  const facts = pending.flatMap(bannerFacts);
  reading.pending = [];
  reading.gap = false;
  const isSame = headText(block.head) === headText(head);
  const places = isPlacing(options);
  const names = (text: string) => namesPlace(text, options.objectOf ?? (() => undefined));
  const isOther = facts.some(places) || headingsIn(pending).some(names);
  if (isSame && !isOther)
    return [...pending.map(noted), skippedAt(row.line, ({ intake }) => intake.seen.titlesAgain)];
  // Under the same titles the day, the tester and the instrument go on.
  const isShared = ({ line }: Fact) => shared.some((fact) => fact.line === line);
  const own = block.facts.filter((fact) => !places(fact) && !isShared(fact));
  // Nor is anything new said where one table follows the other without a word between.
  const isBare = pending.length === 0;
  const above = isSame || isBare ? [...shared, ...own] : shared;
  const goesOn = isBare || (isSame && pending.every((line) => isKnownFact(line, names)));
  return [
    entered(reading, {
      facts: [...above, ...facts],
      head,
      title: titleOf(pending),
      headings: headingsIn(pending),
      above: goesOn ? [...block.above, ...block.headings] : block.above,
      notes: notesBelow(all),
      sample: sampleOf(all, options),
    }),
  ];
};

/** Whether a line without a number is one of its table: without its reading yet, or an answer where most lines have one, as in a checklist: `Clean and dry,OK,`. */
const isLineOf = ({ head, sample }: Block, cells: readonly string[]): boolean =>
  isUnder(head, cells) ||
  cells.some((cell, at) => {
    if (!isAnswer(cell)) return false;
    const own = sample.flatMap((line) => line[at] || []);
    return own.length > 1 && own.filter(isAnswer).length >= MOST_ANSWERS * own.length;
  });
const MOST_ANSWERS = 0.7;

/** Whether a line says nothing but facts, or a place: under it what stood higher goes on. */
const isKnownFact = ({ cells }: TextRow, names: (text: string) => boolean): boolean =>
  countFilled(cells) === 0 || isFactLine(cells) || names(filledOf(cells).join(" "));

/** What the lines above a reading turn out to be: a block of their own, or notes. */
const notesAbove = (reading: Reading): readonly LayoutPart[] => {
  const { block, pending, options } = reading;
  reading.gap = false;
  if (pending.length === 0) return [];
  reading.pending = [];
  const under = underNotes(block, pending, options);
  return under ? [entered(reading, under)] : pending.map(noted);
};

const entered = (reading: Reading, block: Block): LayoutPart => {
  reading.block = block;
  reading.plain.clear();
  reading.tests = testsBeside(block);
  return { block };
};

const skippedAt = (line: number, reason: Said<Told>): LayoutPart => ({ skipped: { line, reason } });

const noted = ({ line, cells }: TextRow): LayoutPart => {
  const note = filledOf(cells).join(" ").slice(0, 60);
  return skippedAt(line, ({ intake }) => intake.seen.note(note));
};

/** A line's text without its time of day, and without the running number that it begins with, which says nothing. */
const tellingText = (row: TextRow, { block, tests }: Reading): string | undefined => {
  const { columns } = block.head;
  const text = tests ? undefined : row.text;
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
