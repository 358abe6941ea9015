import { type DecimalEvidence, decimalWatch } from "../../quantities/decimalMark";
import { quoted } from "../../quantities/quoted";
import type { DecimalMark } from "../../quantities/readNumber";
import { readUnit } from "../../quantities/readUnit";
import { answer, type Result, refuse } from "../../quantities/result";
import { splitReading } from "../../quantities/splitReading";
import { type Unit, unitSize } from "../../quantities/units";
import { FIELDS } from "../words/fields";
import { OWN_LANGUAGE } from "../words/languages/languages";
import { LEFT_OUT, mappable, mappedTo } from "../words/mappedTo";
import { plainWords } from "../words/plainWords";
import { type DateOrder, dateOrder } from "../words/readDate";
import { namesPosition } from "../words/readPosition";
import { readStage } from "../words/readStage";
import { readTitle } from "../words/readTitle";
import { isStated, STATED_NAMES } from "../words/statedColumns";
import { type Synonyms, titleWords } from "../words/synonyms";
import { numbered, titleKey, titleKeys } from "../words/titleKeys";
import type { ExportColumn } from "../words/titles";
import { asInstrument } from "./asInstrument";
import type { Decoded } from "./decode";
import { delimited, type TextRow } from "./delimited";
import { asAnswered, type Evidence } from "./evidence";
import { type HeadingUnit, headingUnit, withHeadingUnit } from "./headingUnit";
import {
  type Block,
  firstHead,
  type Head,
  type LayoutOptions,
  LOOK_ROWS,
  layout,
  MAX_COLUMNS,
  type Part,
  type Skipped,
  wholeRow,
} from "./layout";
import { namesBelow, namesHeld } from "./namesBelow";
import { type RowWithUnits, unitsBeside } from "./unitsBeside";
import { type ExportRow, type Unpivoted, unpivot } from "./unpivot";

export type { ExportColumn } from "../words/titles";
export type { ExportRow } from "./unpivot";

export type Shape = "long" | "wide";

/** One test of an export: a table with its titles and the facts above it. */
export interface ExportBlock {
  readonly title?: string;
  /** Line of its titles, from 1. */
  readonly line: number;
  /** What stands above the table, as key and value. */
  readonly header: Readonly<Record<string, string>>;
  /** One reading a row: the columns of a wide table are those that it was made into. */
  readonly columns: readonly ExportColumn[];
  readonly shape: Shape;
}

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
  readonly titleLines: Evidence<1 | 2>;
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

/** An export, its tables found and their columns recognised, nothing placed yet. */
export interface ExportTable {
  readonly name: string;
  readonly delimiter: string;
  readonly decimal: DecimalEvidence;
  readonly dates: DateOrder | undefined;
  /** Every phase, pole and combination as written, by which the letters of phases are known. */
  readonly positions: ReadonlySet<string>;
  /** The facts above the first table. */
  readonly header: Readonly<Record<string, string>>;
  /** Every column of every table, those that are alike once. */
  readonly columns: readonly ExportColumn[];
  readonly blocks: readonly ExportBlock[];
  /** The rows of all tables, one after the other. */
  readonly rows: readonly ExportRow[];
  /** The same, read from the text anew, so that a long file is never held in parts. */
  readonly each: () => Iterable<EachRow>;
  readonly inspection: Inspection;
}

/** A row of an export, and the table that it is of. */
export interface EachRow {
  readonly block: ExportBlock;
  readonly row: ExportRow;
  /** The line of the same table above that says the same, save a running number and the time of day; the first of them. */
  readonly like?: number;
}

/**
 * What a guess goes by that is looked through before it counts: of two columns that read alike the later
 * is left out, a column of nothing but instruments is the instrument, and names that are written once
 * hold for the blank cells below them.
 */
export interface Guess {
  /** Ids and serial numbers of the lineup's instruments, in lower case. */
  readonly instruments: ReadonlySet<string>;
  /** Lines of the titles of blocks in which no name holds for the cells below it. */
  readonly apart: ReadonlySet<number>;
}

/** What the user can say about a file; whatever is not said is found by inspection. */
export interface ExportOptions {
  /** Name of the file, as it shall stand in the origin column. */
  readonly name: string;
  /** Fields by title, for titles that are not recognised or mean something else here. */
  readonly mapping?: Readonly<Record<string, string>>;
  /** The decimal mark, where the user has settled it. */
  readonly decimal?: DecimalMark;
  readonly dateOrder?: DateOrder;
  readonly delimiter?: string;
  /** Line of the titles of the first table. */
  readonly titles?: number;
  readonly titleLines?: 1 | 2;
  /** Whether a row of units stands under them. */
  readonly units?: boolean;
  /** Whether phases lie across the columns. */
  readonly shape?: Shape;
  /** Lines to be taken for readings that would be skipped. */
  readonly keep?: readonly number[];
  readonly synonyms?: Synonyms;
  /** The unit of readings whose titles and cells tell none, as a heading would say it. */
  readonly heading?: HeadingUnit;
  /** Whether phases of a wide table without a reading are rows too. */
  readonly blanks?: boolean;
  /** Titles of columns whose name is written once and holds for the blank cells below it. */
  readonly down?: readonly string[];
  /** For a guess that somebody looks through. */
  readonly guess?: Guess;
  /** How the bytes were read, for the inspection. */
  readonly encoding?: Decoded["encoding"];
}

export const DELIMITERS = [",", ";", "\t", "|"] as const;
const DELIMITER_NAMES: Readonly<Record<string, string>> = {
  ",": "comma",
  ";": "semicolon",
  "\t": "tab",
  "|": "vertical bar",
};
/** The first titles stand within this many characters. */
const LOOK_CHARACTERS = 100_000;
const SKIPPED_TOLD = 1000;
/** No export names more phases and combinations than this; what is over tells nothing new. */
const MAX_POSITIONS = 5000;

/**
 * Reads an instrument's export: finds the delimiter, the tables with the facts above them, their titles
 * and units, whether phases lie across, the decimal mark and the order of day and month, and the lines
 * that are no readings.
 *
 * @param text delimited text: comma, semicolon, tab or vertical bar
 * @returns `wrong` for what is no text, has no table, or a table without a recognisable column
 * @example readExport("Panel;Pole;R (µΩ)\n=H01;L1;31,5", { name: "crm.csv" }) // delimiter ";", decimal comma, three columns
 */
export const readExport = (text: string, options: ExportOptions): Result<ExportTable> => {
  const file = quoted(options.name, 80);
  const unreadable = unreadableAt(text);
  if (unreadable) return refuse("wrong", `${file} ${unreadable}`);
  const found = findDelimiter(text.slice(0, LOOK_CHARACTERS), options, layoutOptions(options));
  return readRows(() => delimited(text, found.value), found, options);
};

/**
 * The same for rows that are parted already, such as those of a sheet.
 *
 * @param rows reads them from the start each time it is called
 */
export const readRows = (
  rows: () => Iterable<TextRow>,
  delimiter: Evidence<string>,
  options: ExportOptions,
): Result<ExportTable> => {
  const { name, mapping = {}, decimal, shape, synonyms } = options;
  const file = quoted(name, 80);
  const unknown = Object.values(mapping).find((field) => mappedTo(field) === undefined);
  if (unknown !== undefined)
    return refuse("wrong", `${quoted(unknown)} is no field to map a title to; ${mappable()}.`);
  const how = layoutOptions(options);
  const first = take(rows(), LOOK_ROWS);
  const widest = first.find(({ cells }) => cells.length > MAX_COLUMNS);
  if (widest)
    return refuse(
      "wrong",
      `${file} has ${widest.cells.length} columns on line ${widest.line}; at most ${MAX_COLUMNS} are read, as many as a spreadsheet has.`,
    );
  const head = firstHead(first, how);
  if (!head || head.recognised < (options.titles === undefined ? 2 : 1))
    return refuse(
      "wrong",
      `${file} has no row of titles with columns that are recognised. The titles found are ${listed(widestTitles(first))}; ${fieldNames()}.${unclosedIn(first)}`,
    );

  const words = titleWords(synonyms);
  const blocks: ExportBlock[] = [];
  const longs: Unpivoted[] = [];
  /** The columns of each table as they stand in the file. */
  const tables: (readonly ExportColumn[])[] = [];
  let whole: (row: TextRow) => RowWithUnits = wholeRow;
  const seen: { block: Block; lines: number; shape: Evidence<Shape>; unit?: Unit }[] = [];
  const skipped: Skipped[] = [];
  let skippedCount = 0;
  let refused: string | undefined;
  let line = 0;
  const days = new Map<string, number>();
  const positions = new Set<string>();
  let lastDay = "";
  const noteDay = (text: string) => {
    if (text === lastDay) return;
    lastDay = text;
    const day = text.slice(0, 40).split(/[ T]/, 1)[0] ?? "";
    if (!days.has(day)) days.set(day, line);
  };
  const marks = decimalWatch();
  const here = () => `line ${line}`;
  /** Runs of lines that are readings: first and last line, and the table that they are of. */
  const runs: number[] = [];
  /** For each of these lines the first that says the same, 0 for none. */
  const likes: number[] = [];
  let [measured, date, position]: [readonly number[], number, number] = [[], -1, -1];

  const below = new Set((options.down ?? []).map(plainWords));
  const guessed = options.guess && rowsByHead(layout(rows(), head, how));
  const withInstrument = (columns: readonly ExportColumn[], { line }: Head) =>
    guessed && options.guess
      ? firstAlike(
          asInstrument(columns, guessed.get(line) ?? [], options.guess.instruments, how.given),
        )
      : columns;
  const withNames = (columns: readonly ExportColumn[], { line }: Head) =>
    guessed && !options.guess?.apart.has(line)
      ? namesBelow(columns, guessed.get(line) ?? [])
      : columns.map((column) =>
          below.has(plainWords(column.title)) ? { ...column, below: true as const } : column,
        );

  const enter = (found: Block) => {
    const staged = asStage(found.head.columns, found, first);
    const named = withNames(withInstrument(staged, found.head), found.head);
    const heading = options.heading ?? headingUnit(found.title);
    const measuredIn = (columns: readonly ExportColumn[]) =>
      withHeadingUnit(
        asPart(asPoles(columns, found, first, heading), found, first, how.given),
        heading,
      );
    const head = { ...found.head, columns: measuredIn(named) };
    const block = { ...found, head };
    const columns = measuredIn(settled(named, shape));
    refused = doubled(columns);
    const long = unpivot(columns, options.blanks);
    longs.push(long);
    tables.push(columns);
    whole = wholeLine(columns);
    const wide = long.columns !== columns;
    blocks.push({
      title: block.title,
      line: block.head.line,
      header: Object.fromEntries(block.facts.map(({ key, value }) => [key, value])),
      columns: long.columns,
      shape: wide ? "wide" : "long",
    });
    const isMeasuredIn = head.columns.some(({ unit }, at) => unit !== named[at]?.unit);
    seen.push({
      block,
      lines: 0,
      shape: shapeSeen(wide, shape),
      ...(isMeasuredIn && { unit: heading?.unit }),
    });
    measured = long.columns
      .filter(({ field, unit }) => unit !== undefined || isMeasured(field ?? ""))
      .map(({ index }) => index);
    const indexOf = (wanted: string) =>
      long.columns.find(({ field }) => field === wanted)?.index ?? -1;
    [date, position] = [indexOf("date"), indexOf("position")];
    for (const fact of block.facts) {
      const { field = "" } = readTitle(fact.key, undefined, words);
      line = fact.line;
      if (field === "date") noteDay(fact.value);
      if (field === "position") positions.add(fact.value);
      if (isMeasured(field)) marks.note(fact.value, here);
    }
  };
  const note = ({ cells }: TextRow) => {
    if (date >= 0) noteDay(cells[date] ?? "");
    if (position >= 0 && positions.size < MAX_POSITIONS) positions.add(cells[position] ?? "");
    for (const index of measured) {
      const text = cells[index];
      if (text !== undefined && text !== "") marks.note(text, here);
    }
  };
  for (const part of layout(rows(), head, how)) {
    if (part.row) {
      const last = seen.at(-1);
      if (last) last.lines += 1;
      line = part.row.line;
      if (runs.at(-1) === blocks.length - 1 && runs.at(-2) === line - 1)
        runs[runs.length - 2] = line;
      else runs.push(line, line, blocks.length - 1);
      likes.push(part.like ?? 0);
      // What is said again word for word tells nothing new.
      if (part.like !== undefined) continue;
      const long = longs.at(-1) as Unpivoted;
      const row = whole(part.row);
      if (long.rowsOf) for (const part of long.rowsOf(row)) note(part);
      else note(row);
    } else if (part.block) {
      enter(part.block);
      if (refused !== undefined) return refuse("wrong", `${file}: ${refused}`);
    } else {
      skippedCount += 1;
      if (skipped.length < SKIPPED_TOLD) skipped.push(part.skipped);
    }
  }
  const found = marks.evidence();

  function* each(): Generator<EachRow> {
    let at = 0;
    let reading = -1;
    const lines = tables.map(wholeLine);
    for (const row of rows()) {
      while (row.line > (runs[at + 1] ?? Number.POSITIVE_INFINITY)) at += 3;
      const of = runs[at + 2];
      if (of === undefined) return;
      if (row.line < (runs[at] ?? 0)) continue;
      reading += 1;
      const block = blocks[of] as ExportBlock;
      const { rowsOf } = longs[of] as Unpivoted;
      const whole = (lines[of] ?? wholeRow)(row);
      if (rowsOf) for (const part of rowsOf(whole)) yield { block, row: part };
      else yield { block, row: whole, like: likes[reading] || undefined };
    }
  }
  const mark: DecimalEvidence = decimal
    ? { mark: decimal, evidence: `decimal ${decimal === "," ? "comma" : "point"}, as was said` }
    : found;
  const written = [...days];
  const order = options.dateOrder
    ? asAnswered(options.dateOrder, `${options.dateOrder === "day-first" ? "day" : "month"} first`)
    : dateOrder(
        written.map(([day]) => day),
        (index) => `line ${written[index]?.[1]}`,
      );
  return answer({
    name,
    delimiter: delimiter.value,
    decimal: mark,
    dates: order.value,
    positions,
    header: blocks[0]?.header ?? {},
    columns: blocks.length === 1 ? (blocks[0]?.columns ?? []) : distinct(blocks),
    blocks,
    get rows() {
      return Array.from(
        each(),
        ({ row: { line, cells, from } }): ExportRow => ({
          line,
          cells,
          ...(from && { from }),
        }),
      );
    },
    each,
    inspection: {
      encoding: options.encoding,
      delimiter,
      decimal: {
        value: mark.mark,
        evidence: mark.evidence,
        confidence:
          mark.mark === undefined && !mark.evidence.startsWith("no decimal mark in use")
            ? "open"
            : "certain",
      },
      dateOrder: order,
      blocks: seen.map((one) => ({
        ...inspected(one.block, one.lines, one.shape, options, words),
        ...(one.unit && { unit: one.unit }),
      })),
      skipped,
      skippedCount,
    },
  });
};

/** Makes the reader of a table's lines with what stands above and beside for them: joined, held, units. */
const wholeLine = (columns: readonly ExportColumn[]): ((row: TextRow) => RowWithUnits) => {
  const [hold, beside] = [namesHeld(columns), unitsBeside(columns)];
  return (row) => {
    const joined = wholeRow(row);
    const held = hold?.(joined) ?? joined;
    return beside?.(held) ?? held;
  };
};

/** The lines of readings below each line of titles. */
const rowsByHead = (parts: Iterable<Part>): ReadonlyMap<number, readonly TextRow[]> => {
  const found = new Map<number, TextRow[]>();
  let now: TextRow[] = [];
  for (const { block, row } of parts)
    if (block) {
      now = found.get(block.head.line) ?? [];
      found.set(block.head.line, now);
    } else if (row) now.push(row);
  return found;
};

const layoutOptions = ({
  mapping = {},
  synonyms,
  keep,
  ...said
}: ExportOptions): LayoutOptions => ({
  given: new Map(
    Object.entries(mapping).map(([title, field]) => [titleKey(title), mappedTo(field) ?? field]),
  ),
  words: titleWords(synonyms),
  titles: said.titles,
  titleLines: said.titleLines,
  units: said.units,
  keep: keep && new Set(keep),
});

const take = <T>(items: Iterable<T>, most: number): T[] => {
  const taken: T[] = [];
  for (const item of items) {
    taken.push(item);
    if (taken.length >= most) break;
  }
  return taken;
};

const unreadableAt = (text: string): string | undefined => {
  if (text.trim() === "") return "is empty; an export has a row of titles and rows of readings.";
  const [strange] = /[\0\ufffd]/.exec(text) ?? [];
  if (strange === undefined) return undefined;
  const line = text.slice(0, text.indexOf(strange)).split(/\r\n|\r|\n/).length;
  return strange === "\0"
    ? `is not delimited text: there is a NUL character on line ${line}. Export it as CSV or tab-separated text, UTF-8.`
    : `has a character on line ${line} that is not UTF-8. Save it again as UTF-8, so that units such as µΩ are read right.`;
};

/** The delimiter by which the most titles are recognised. */
const findDelimiter = (
  text: string,
  { delimiter }: ExportOptions,
  how: LayoutOptions,
): Evidence<string> => {
  if (delimiter !== undefined) return asAnswered(delimiter, nameOfDelimiter(delimiter));
  const scores = DELIMITERS.map((mark) => {
    const rows = take(delimited(text, mark), LOOK_ROWS);
    const wide = rows.some(({ cells }) => cells.length > MAX_COLUMNS);
    const recognised = wide ? 0 : (firstHead(rows, how)?.recognised ?? 0);
    return { mark, recognised, columns: Math.max(0, ...rows.map(({ cells }) => cells.length)) };
  }).sort((one, other) => other.recognised - one.recognised || other.columns - one.columns);
  const [best, next] = scores;
  const mark = best?.mark ?? ",";
  return {
    value: mark,
    evidence: `${nameOfDelimiter(mark)}, by which ${best?.recognised ?? 0} columns are recognised`,
    confidence: (next?.recognised ?? 0) < 2 ? "certain" : "likely",
  };
};

const nameOfDelimiter = (mark: string) => DELIMITER_NAMES[mark] ?? quoted(mark);

/** Told to be long, a table's phases are no more than titles. */
const settled = (columns: readonly ExportColumn[], shape: Shape | undefined) =>
  shape === "long" ? columns.map(({ says: _says, ...column }) => column) : columns;

/**
 * Columns titled L1, L2, L3 without a unit: times of a breaker's poles, or what was read of a phase.
 * What stands in their cells tells, or else a heading over the table.
 */
const asPoles = (
  columns: readonly ExportColumn[],
  { head }: Block,
  rows: readonly TextRow[],
  heading: HeadingUnit | undefined,
): readonly ExportColumn[] => {
  const open = columns.filter(
    ({ field, unit, says }) => /^l[123]$/.test(field ?? "") && unit === undefined && !says,
  );
  const beside = unitsBeside(columns) ?? ((row: TextRow) => row);
  const from = rows.findIndex(({ line }) => line > head.line);
  const inCells = (from < 0 ? [] : rows.slice(from, from + 30)).map(beside).flatMap(({ cells }) =>
    open.flatMap(({ index }) => {
      const unit = readUnit(splitReading(cells[index] ?? "")?.unit ?? "");
      return unit.ok ? unit.value : [];
    }),
  );
  const units = inCells.length === 0 && heading ? [heading.unit] : inCells;
  const quantities = new Set(units.map((unit) => unitSize(unit).quantity));
  return quantities.size === 0 || quantities.has("time")
    ? columns
    : columns.map((column) =>
        open.includes(column)
          ? { ...column, field: "reading", says: { position: (column.field ?? "").toUpperCase() } }
          : column,
      );
};

/** A column titled as the test of which every cell begins with before or after says the stage. */
const asStage = (
  columns: readonly ExportColumn[],
  { head }: Block,
  rows: readonly TextRow[],
): readonly ExportColumn[] => {
  const test = columns.find(({ field }) => field === "test");
  if (!test || columns.some(({ field, says }) => field === "stage" || says?.stage)) return columns;
  const written = linesBelow(rows, head).flatMap(({ cells }) => cells[test.index] || []);
  const isStage = (text: string) => readStage(text.split(/\s/, 1)[0] ?? "") !== undefined;
  return written.length > 1 && written.slice(1).every(isStage)
    ? columns.map((column) => (column === test ? { ...column, field: "stage" } : column))
    : columns;
};

/** A column titled as the phase or pole that names none, in a table whose titles name them, is the part. */
const asPart = (
  columns: readonly ExportColumn[],
  { head }: Block,
  rows: readonly TextRow[],
  given: LayoutOptions["given"],
): readonly ExportColumn[] => {
  const over = columns.find(({ field, says }) => field === "position" && !says);
  const across = columns.filter(({ says }) => says?.position);
  if (
    !over ||
    across.length < 2 ||
    given.has(titleKey(over.title)) ||
    columns.some(({ field }) => field === "part")
  )
    return columns;
  const written = linesBelow(rows, head).flatMap(({ cells }) => cells[over.index] || []);
  const isPart = (text: string) => /\p{L}/u.test(text) && text.length > 1 && !namesPosition(text);
  return written.length > 0 && written.every(isPart)
    ? columns.map((column) => (column === over ? { ...column, field: "part" } : column))
    : columns;
};

/** The first lines below the titles, up to a blank line or a heading. */
const linesBelow = (rows: readonly TextRow[], { line }: Head): readonly TextRow[] => {
  const from = rows.findIndex((row) => row.line > line);
  const below = from < 0 ? [] : rows.slice(from, from + 30);
  const end = below.findIndex(({ cells }) => cells.filter((cell) => cell !== "").length < 2);
  return end < 0 ? below : below.slice(0, end);
};

const shapeSeen = (wide: boolean, said: Shape | undefined): Evidence<Shape> =>
  said
    ? asAnswered(said, said)
    : wide
      ? { value: "wide", evidence: "wide, because titles name phases", confidence: "likely" }
      : { value: "long", evidence: "long: one reading a line", confidence: "certain" };

/** The first two columns that read alike. */
const alike = (columns: readonly ExportColumn[]): [ExportColumn, ExportColumn] | undefined => {
  const first = new Map<string, ExportColumn>();
  for (const column of columns) {
    if (column.field === undefined || column.field === "unit") continue;
    const key = JSON.stringify([column.field, column.says]);
    const before = first.get(key);
    if (before) return [before, column];
    first.set(key, column);
  }
  return undefined;
};

const doubled = (columns: readonly ExportColumn[]): string | undefined => {
  const [one, other] = alike(columns) ?? [];
  if (!one || !other) return undefined;
  const name = numbered(columns.map(({ title }) => title))[columns.indexOf(other)] ?? "";
  const how =
    name === other.title
      ? ""
      : `; the second is called ${quoted(name)}, such as "${name}=left out"`;
  return `the columns ${quoted(one.title)} and ${quoted(other.title)} both read as ${nameOf(one.field)}; say by a mapping which of them it is${how}.`;
};

const firstAlike = (columns: readonly ExportColumn[]): readonly ExportColumn[] => {
  const [one, other] = alike(columns) ?? [];
  return one && other
    ? firstAlike(
        columns.map((column) =>
          column === other
            ? { index: column.index, title: column.title, alike: one.title }
            : column,
        ),
      )
    : columns;
};

const distinct = (blocks: readonly ExportBlock[]): ExportColumn[] => [
  ...new Map(
    blocks.flatMap(({ columns }) =>
      columns.map((column): [string, ExportColumn] => [`${column.title} ${column.field}`, column]),
    ),
  ).values(),
];

const inspected = (
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
      evidence: `line ${head.line}, where ${head.recognised} titles are recognised`,
      confidence: likely(head.recognised),
    },
    titleLines: {
      value: head.lines,
      evidence:
        head.lines === 2
          ? "two lines, because the upper groups the lower"
          : "one line, which says all that is recognised",
      confidence: head.lines === 2 ? "likely" : "certain",
    },
    units: {
      value: head.units,
      evidence: head.units ? "a row of units under the titles" : "no row of units",
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
        evidence: `${field.evidence}; written once, it holds for the blank cells below it`,
        confidence: "likely",
      }
    : field;

const fieldSeen = (
  { title, field, says, alike, listed }: ExportColumn,
  given: boolean,
  words: ReturnType<typeof titleWords>,
): Evidence<string | undefined> => {
  if (given) return asAnswered(field, nameOf(field));
  if (alike !== undefined)
    return {
      value: undefined,
      evidence: `reads as the same as ${quoted(alike)}, and is left out; say in the map which of them it is`,
      confidence: "open",
    };
  if (field === undefined)
    return { value: undefined, evidence: "not recognised, and left out", confidence: "open" };
  if (listed)
    return {
      value: field,
      evidence: `${nameOf(field)}: its every cell is an Id or serial number of the lineup's instruments`,
      confidence: "likely",
    };
  if (field === "part" && readTitle(title, undefined, words).field === "position")
    return {
      value: field,
      evidence: `${nameOf(field)}: its cells name no phase, and the titles beside it do`,
      confidence: "likely",
    };
  const english = readTitle(title, undefined, () => undefined).field === field;
  return {
    value: field,
    evidence: says
      ? `${nameOf(field)} of ${[says.position, says.stage].filter(Boolean).join(", ")}, by the title`
      : `${nameOf(field)}, by the ${english ? "title" : words(title) ? "title in another language" : "words of the title"}`,
    confidence: english && !says ? "certain" : "likely",
  };
};

const isMeasured = (field: string) =>
  field === "reading" || (Object.hasOwn(FIELDS, field) && FIELDS[field]?.quantity !== undefined);

const nameOf = (field: string | undefined): string =>
  field === undefined
    ? LEFT_OUT
    : isStated(field)
      ? STATED_NAMES[field]
      : (Object.hasOwn(FIELDS, field) && FIELDS[field]?.name) || quoted(field);

/** Names the first line whose quotation mark does not close. */
const unclosedIn = (rows: readonly TextRow[]): string => {
  const row = rows.find(({ unclosed }) => unclosed);
  return row ? ` A quotation mark on line ${row.line} opens a cell and none closes it.` : "";
};

/** Titles and fields that would be right. */
const fieldNames = () =>
  `right would be titles such as ${Object.keys(FIELDS)
    .map((field) => `${OWN_LANGUAGE.titles[field]?.[0]} (${field})`)
    .join(", ")}`;

const widestTitles = (rows: readonly TextRow[]): readonly string[] =>
  rows.reduce<readonly string[]>(
    (widest, { cells }) => (cells.length > widest.length ? cells : widest),
    [],
  );

const listed = (titles: readonly string[]) => {
  const shown = titles.filter((title) => title !== "").slice(0, 12);
  return shown.length > 0 ? shown.map((title) => quoted(title)).join(", ") : "all blank";
};
