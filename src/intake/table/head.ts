import { isAnswer } from "../cells/listWord";
import type { TextRow } from "../text/delimited";
import { countFilled, isMultiple, isNumberish } from "../text/textCells";
import { namesPlace } from "../understand/headedPlaces";
import { placedAcross } from "../understand/placedAcross";
import { plainWords } from "../words/plainWords";
import { isOneOf, namesPosition, schemeAmong } from "../words/readPosition";
import { readStage } from "../words/readStage";
import { readTitle, splitTitle } from "../words/readTitle";
import { timesAcross } from "../words/timesAcross";
import { type ExportColumn, isUnitRow, type TitleReading, titlesOf } from "../words/titles";
import { isFactLine } from "./factsIn";

/** The titles of a table: where they stand, and the columns under them. */
export interface Head {
  readonly line: number;
  /** Rows of titles, and whether a row of units stands under them. */
  readonly lines: 1 | 2 | 3;
  readonly units: boolean;
  /** The lines as they stand, and the row of units below them. */
  readonly texts: readonly (readonly string[])[];
  readonly unitTexts: readonly string[];
  readonly columns: readonly ExportColumn[];
  /** Fields and phases that were recognised. */
  readonly recognised: number;
  /** Set where each title carries a unit, and a number stands under each. */
  readonly measured?: true;
}

/** What the user has said about where the titles stand. */
export interface LayoutOptions extends TitleReading {
  /** The line of the first row of titles. */
  readonly titles?: number;
  readonly titleLines?: 1 | 2 | 3;
  /** The panel or section that a text names, where the workbook has told. */
  readonly objectOf?: (text: string) => string | undefined;
  /** Whether a text is what the records call a part or an item. */
  readonly isPart?: (text: string) => boolean;
  readonly units?: boolean;
  /** Lines to be taken for readings, whatever they look like. */
  readonly keep?: ReadonlySet<number>;
}

/** The first titles stand within so many rows. */
export const LOOK_ROWS = 120;
/** More columns than a spreadsheet has are no table. */
export const MAX_COLUMNS = 16_384;

/** Titles stand on so many lines at most. */
const MAX_LINES = 3;
/** The titles at a row, its units and the first line below them stand within so many rows. */
export const HEAD_ROWS = MAX_LINES + 2;

/**
 * The titles at a row: of one line, or of the two or three that say more than fewer do, or than those
 * below the first do by themselves. Undefined where the rows are none.
 */
export const headAt = (
  rows: readonly TextRow[],
  options: LayoutOptions,
  least = 2,
): Head | undefined => {
  const [first] = rows;
  // A remark such as "# Made up for a trial" is no title, whatever words stand in it.
  if (!first || /^#\s*\S/.test(first.cells[0] ?? "") || isFactLine(first.cells)) return undefined;
  if (areAnswers(first.cells)) return undefined;
  const most = titleLinesAt(rows, options);
  const of = (from: number, to: number) => headOf(rows.slice(from, to), rows[to], options);
  let best: Head | undefined =
    options.titleLines === undefined || most === 1 ? of(0, 1) : undefined;
  for (let lines = 2; lines <= most; lines++) {
    if (options.titleLines !== undefined && lines !== options.titleLines) continue;
    const head = of(0, lines);
    const lower = Array.from({ length: lines - 1 }, (_, from) => of(from + 1, lines).recognised);
    if (head.recognised > Math.max(best?.recognised ?? -1, ...lower)) best = head;
  }
  return best && best.recognised >= least ? best : undefined;
};

/** How many lines may be titles together, from the first on. */
const titleLinesAt = (
  rows: readonly TextRow[],
  { titleLines, objectOf }: LayoutOptions,
): number => {
  if (titleLines !== undefined) return Math.min(titleLines, rows.length);
  const [first] = rows;
  if (!first || isHeading(first) || isSentence(first, rows[1])) return 1;
  let lines = 1;
  for (const row of rows.slice(1, MAX_LINES)) {
    if (countFilled(row.cells) < 2 || !mayBeTitles(row.cells) || isFactLine(row.cells)) break;
    if (namesOne(row.cells, objectOf) || isUnitRow(row.cells) || areAnswers(row.cells)) break;
    lines += 1;
  }
  return lines;
};

/** Whether a line answers behind its first cell, as those of a list of checks do: `Clean and dry,OK,OK,OK`. */
const areAnswers = ([first = "", ...others]: readonly string[]): boolean => {
  const filled = others.filter((cell) => cell !== "" && cell !== "-");
  return first !== "" && filled.length > 1 && filled.every(isAnswer);
};

/** Whether a line names one panel or section, as readings do; titles name none, or several across. */
const namesOne = (cells: readonly string[], objectOf: LayoutOptions["objectOf"]): boolean => {
  if (objectOf === undefined) return false;
  // Beside the other two letters of its scheme, B is a phase and no section.
  const phases = schemeAmong(cells.map((cell) => cell.toUpperCase())) ?? "";
  const named = cells.flatMap((cell) =>
    isOneOf(phases, cell.toUpperCase()) ? [] : (objectOf(cell) ?? []),
  );
  return new Set(named).size === 1;
};

/** A text alone in the first column stands over the whole table, and groups no columns of it. */
const isHeading = ({ cells }: TextRow): boolean => cells[0] !== "" && countFilled(cells) === 1;

/** A line parted by nothing but the commas of its own words, over titles that are more: `Relay R1, secondary injection`. */
const isSentence = ({ text = "", cells }: TextRow, next: TextRow | undefined): boolean =>
  next !== undefined &&
  cells.length > 1 &&
  cells.length < next.cells.length &&
  cells.every((cell) => cell !== "") &&
  text.length < LONGEST_SENTENCE &&
  /[^,;\s][,;] \p{L}/u.test(text) &&
  !/[,;|\t](?! \S)/.test(text) &&
  /[,;](?! )/.test(next.text ?? "");
const LONGEST_SENTENCE = 300;

const headOf = (
  lines: readonly TextRow[],
  below: TextRow | undefined,
  options: LayoutOptions,
): Head => {
  const units = options.units ?? isUnitRow(below?.cells ?? []);
  const own = ownUnits(lines);
  const unitTexts = units ? (below?.cells ?? []) : [];
  const columns = titlesOf(
    lines.map(({ cells }) => cells),
    units ? unitTexts : own,
    options,
  );
  const measured = measuredUnder(columns, below?.cells ?? []);
  const fields = new Set(columns.flatMap(({ field, says }) => (says ? [] : (field ?? []))));
  const says = new Set(
    columns.flatMap(({ field, says }) => (says ? JSON.stringify([field, says]) : [])),
  );
  return {
    line: lines[0]?.line ?? 0,
    lines: lines.length as Head["lines"],
    units,
    texts: lines.map(({ cells }) => cells),
    unitTexts,
    columns,
    ...(measured > fields.size ? { measured: true } : {}),
    // A lone phase among titles may be anything.
    recognised:
      Math.max(fields.size, measured) +
      (says.size > 1 ? says.size : 0) +
      objectsAcross(columns, lines, options) +
      partsAcross(lines.at(-1)?.cells ?? [], options) +
      groupedAcross(columns, lines) +
      unitsAcross(lines, below, options) +
      devicesAcross(lines) +
      timesAcross(lines.at(-1)?.cells ?? []).size +
      multiplesAcross(lines.at(-1)?.cells ?? []),
  };
};

/** How many titles are a unit and no more, over numbers beside the name of a place: `Point;MΩ` over `52-F1 A-G;6100`. */
const unitsAcross = (
  lines: readonly TextRow[],
  below: TextRow | undefined,
  { objectOf }: LayoutOptions,
): number => {
  const [titles] = lines;
  const [name = "", ...cells] = below?.cells ?? [];
  if (objectOf === undefined || lines.length > 1 || !titles?.cells[0]) return 0;
  const units = titles.cells
    .slice(1)
    .filter((title, at) => title.length > 1 && isUnitRow([title]) && isNumberish(cells[at] ?? ""));
  return units.length > 0 && namesPlace(name, objectOf) ? units.length + 1 : 0;
};

/** The units of titles that are nothing but units: `V`, `mA` over the points of a curve. */
const ownUnits = (lines: readonly TextRow[]): readonly string[] => {
  const [only, ...others] = lines;
  return only && others.length === 0 && isUnitRow(only.cells) ? only.cells : [];
};

/** How many units stand in the titles, where each carries one and a number stands under each: `Ue V`, `Ie mA`. */
const measuredUnder = (columns: readonly ExportColumn[], below: readonly string[]): number => {
  const units = columns.flatMap(({ index, title, unit }) => {
    if (title === "") return [];
    return isNumberish(below[index] ?? "") ? (unit ?? splitTitle(title).unit) : undefined;
  });
  return units.includes(undefined) ? 0 : new Set(units).size;
};

/** How many elements of a relay group the titles below them. */
const devicesAcross = ([first, second]: readonly TextRow[]): number =>
  first && areDevices(first.cells, second) ? new Set(first.cells).size : 0;

/** Three phases under two groups. */
const LEAST_GROUPED = 6;

/**
 * How many phases are told apart by the line that groups them alone, as those of closing and opening are:
 * each comes again among the titles, under another group.
 */
const groupedAcross = (columns: readonly ExportColumn[], lines: readonly TextRow[]): number => {
  const last = lines.at(-1)?.cells ?? [];
  const isAgain = ({ index }: ExportColumn) =>
    last.some((title, at) => at !== index && title !== "" && title === last[index]);
  // In milliseconds a phase is a pole's time, and not where something was measured.
  const isOfPhase = ({ index, says }: ExportColumn) =>
    says !== undefined || namesPosition(last[index] ?? "");
  const again = columns.filter((column) => isOfPhase(column) && isAgain(column));
  const isApart = new Set(again.map(({ title }) => title)).size === again.length;
  return isApart && again.length >= LEAST_GROUPED ? again.length : 0;
};

/** How many multiples of a pick-up lie across as titles; one alone may be anything. */
const multiplesAcross = (cells: readonly string[]): number => {
  const multiples = new Set(cells.filter(isMultiple));
  return multiples.size > 1 ? multiples.size : 0;
};

/** How many parts or items lie across as titles, as the records call them; one alone may be anything. */
const partsAcross = (cells: readonly string[], { isPart = () => false }: LayoutOptions): number => {
  const parts = new Set(cells.slice(1).filter(isPart));
  return parts.size > 1 ? parts.size : 0;
};

/** How many panels or sections lie across as titles; one alone may be anything. */
const objectsAcross = (
  columns: readonly ExportColumn[],
  lines: readonly TextRow[],
  { objectOf }: LayoutOptions,
): number => {
  if (objectOf === undefined) return 0;
  // A line of panels may group the titles below it.
  const groups = lines.slice(0, -1).flatMap(({ cells }) => cells);
  const titles = [...columns.map(({ title }) => title), ...groups];
  const objects = new Set(titles.flatMap((title) => objectOf(title) ?? []));
  return Math.max(
    objects.size > 1 ? objects.size : 0,
    placedAcross(lines.at(-1)?.cells ?? [], objectOf).size,
  );
};

/** No row of readings: no numbers, but for the poles where all three are named by them. */
export const mayBeTitles = (cells: readonly string[]): boolean => {
  if (timesAcross(cells).size > 0) return true;
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

/** Device numbers of relays' elements (IEEE C37.2, from memory), with the letters that are written to them. */
const DEVICE = /^(?:21|25|27|32|37|46|47|49|50|51|59|67|81|87)[A-Z]{0,3}$/;

/** Whether a line groups the titles below it by elements of a relay: `,51,51,50` over `Panel,Pick-up A,2x s,Pick-up A`. */
const areDevices = ([first = "", ...cells]: readonly string[], below: TextRow | undefined) => {
  const filled = cells.filter((cell) => cell !== "");
  return (
    first === "" &&
    filled.length > 1 &&
    filled.every((cell) => DEVICE.test(cell)) &&
    below !== undefined &&
    below.cells[0] !== "" &&
    countFilled(below.cells) > filled.length &&
    mayBeTitles(below.cells)
  );
};

/** Whether titles may begin with a line: of words, or of elements over these. */
export const mayBeHead = ({ cells }: TextRow, below: TextRow | undefined): boolean =>
  mayBeTitles(cells) || areDevices(cells, below);

/** Whether all numbers of a line are names of panels in rising order, as panels lie across that go by numbers. */
const arePanels = (cells: readonly string[], objectOf: LayoutOptions["objectOf"]): boolean => {
  const numbers = cells.filter((cell) => isNumberish(cell));
  return (
    objectOf !== undefined &&
    numbers.length > 2 &&
    !isNumberish(cells[0] ?? "") &&
    numbers.every(
      (cell, at) =>
        /^\d+$/.test(cell) &&
        objectOf(cell) !== undefined &&
        (at === 0 || Number(cell) > Number(numbers[at - 1])),
    )
  );
};

/** Whether a line is of two titles, both known and one with its unit, over lines that have a number there and a name beside it. */
const isOfNumbers = (
  { columns, recognised, lines, line: from }: Head,
  filled: number,
  rows: readonly TextRow[],
): boolean => {
  if (lines > 1 || filled !== 2 || recognised !== 2) return false;
  const measured = columns.filter(({ unit }) => unit !== undefined);
  const below = rows.filter(({ line }) => line > from).slice(0, 2);
  const [at, other] = [measured[0]?.index ?? -1, measured[0]?.index === 0 ? 1 : 0];
  return (
    measured.length === 1 &&
    below.length === 2 &&
    below.every(({ cells }) => isNumberish(cells[at] ?? "") && /\p{L}/u.test(cells[other] ?? ""))
  );
};

/** The best titles among the first rows. */
export const firstHead = (rows: readonly TextRow[], options: LayoutOptions): Head | undefined => {
  const heads = rows.flatMap((row, at) => {
    const isTitles = mayBeHead(row, rows[at + 1]) || arePanels(row.cells, options.objectOf);
    if (options.titles === undefined ? !isTitles : row.line !== options.titles) return [];
    const head = headAt(
      rows.slice(at, at + HEAD_ROWS),
      options,
      options.titles === undefined ? 2 : 0,
    );
    return head ? [{ head, filled: countFilled(row.cells) }] : [];
  });
  const most = Math.max(0, ...heads.map(({ head }) => head.recognised));
  // The first that is no mere line of facts; a file of several tests may recognise more of a later one.
  return heads.find(
    ({ head, filled }) =>
      head.recognised === most ||
      (head.recognised > 2 && head.recognised * 2 > most && isConvincing(head, filled)) ||
      isOfNumbers(head, filled, rows),
  )?.head;
};

/** A line without a reading yet, whose words would be titles: it names a stage and a phase where its table does. */
export const isUnder = ({ columns }: Head, cells: readonly string[]): boolean => {
  const cellOf = (wanted: string) =>
    cells[columns.find(({ field, says }) => !says && field === wanted)?.index ?? -1] ?? "";
  return readStage(cellOf("stage")) !== undefined && namesPosition(cellOf("position"));
};

/** Of a later row of titles, at least half is recognised, and a phase alone is not enough. */
export const isConvincing = (
  { columns, recognised, lines, measured }: Head,
  filled: number,
): boolean =>
  recognised >= 2 &&
  (measured === true || columns.some(({ field, says }) => field !== undefined && !says)) &&
  (lines > 1 ||
    recognised * 2 >= filled ||
    columns.filter(({ field }) => field !== undefined).length * 2 >= filled) &&
  (filled > 2 || columns.length <= 3);

/** The titles in plain words, by which the same titles are known again. */
export const headText = ({ columns }: Head) =>
  columns.map(({ title }) => plainWords(title)).join("|");
