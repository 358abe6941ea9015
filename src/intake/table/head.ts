import type { TextRow } from "../text/delimited";
import { countFilled, isNumberish } from "../text/textCells";
import { plainWords } from "../words/plainWords";
import { namesPosition } from "../words/readPosition";
import { readStage } from "../words/readStage";
import { readTitle } from "../words/readTitle";
import { type ExportColumn, isUnitRow, type TitleReading, titlesOf } from "../words/titles";

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
/** More columns than a spreadsheet has are no table. */
export const MAX_COLUMNS = 16_384;

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
  const single = options.titleLines === 2 ? undefined : headOf([first], second, options);
  const double =
    second && mayHaveTwoLines(first, second, options)
      ? headOf([first, second], third, options)
      : undefined;
  const isDouble =
    double !== undefined &&
    (single === undefined ||
      double.recognised > Math.max(single.recognised, lowerAlone(second, third, options)));
  const best = isDouble ? double : single;
  return best && best.recognised >= least ? best : undefined;
};

const mayHaveTwoLines = (
  first: TextRow,
  second: TextRow,
  { titleLines }: LayoutOptions,
): boolean =>
  titleLines === undefined
    ? !isHeading(first) && countFilled(second.cells) > 1 && mayBeTitles(second.cells)
    : titleLines === 2;

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
export const mayBeTitles = (cells: readonly string[]): boolean => {
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

/** A line without a reading yet, whose words would be titles: it names a stage and a phase where its table does. */
export const isUnder = ({ columns }: Head, cells: readonly string[]): boolean => {
  const cellOf = (wanted: string) =>
    cells[columns.find(({ field, says }) => !says && field === wanted)?.index ?? -1] ?? "";
  return readStage(cellOf("stage")) !== undefined && namesPosition(cellOf("position"));
};

/** Of a later row of titles, at least half is recognised, and a phase alone is not enough. */
export const isConvincing = ({ columns, recognised, lines }: Head, filled: number): boolean =>
  recognised >= 2 &&
  columns.some(({ field, says }) => field !== undefined && !says) &&
  (lines === 2 || columns.filter(({ field }) => field !== undefined).length * 2 >= filled) &&
  (filled > 2 || columns.length <= 3);

/** The titles in plain words, by which the same titles are known again. */
export const headText = ({ columns }: Head) =>
  columns.map(({ title }) => plainWords(title)).join("|");
