import { sensesOf } from "../words/senses";
import type { TextRow } from "./delimited";

/** A column whose cells hold several readings side by side, and the titles of the columns that these make. */
interface Parted {
  readonly index: number;
  /** The row of its title, from 0. */
  readonly head: number;
  readonly titles: readonly string[];
}

const MARK = /\s*[/;|]\s*/;
const MOST = 0.8;
const LONGEST = 80;
/** Names side by side in a title: `R-Y-B (µΩ)`, `IR L1/L2/L3`, `Counter before/after`. */
const PHASES =
  /^(.*?)(?<![\p{L}\p{N}])(?:L1|A|R|U)\s*[-/,;–]\s*(?:L2|[BYSV])\s*[-/,;–]\s*(?:L3|[CBTW])(?![\p{L}\p{N}])(.*)$/iu;
const WORDS =
  /^((?:[^/()[\]]*[ ([])?)(\p{L}[\p{L}\p{N}]{0,13})\s*\/\s*(\p{L}[\p{L}\p{N}]{0,13})(?:\s*\/\s*(\p{L}[\p{L}\p{N}]{0,13}))?([)\]]?.*)$/u;

/** The titles that one title names side by side, each with what stands before and after all of them. */
export const partedTitle = (title: string): readonly string[] | undefined => {
  if (title.length > LONGEST) return undefined;
  const phases = PHASES.exec(title);
  if (phases) {
    const [whole, before = "", after = ""] = phases;
    const names = whole.slice(before.length, whole.length - after.length).split(/\s*[-/,;–]\s*/);
    return names.map((name) => joined(before, name, after));
  }
  const [, before = "", one = "", two = "", three, after = ""] = WORDS.exec(title) ?? [];
  const names = [one, two, ...(three === undefined ? [] : [three])];
  return one === "" || two === "" || areOne(title, names)
    ? undefined
    : names.map((name) => joined(before, name, after));
};

/** Whether words side by side are of one thing: a day, a ratio, or the same in another language. */
const areOne = (title: string, names: readonly string[]): boolean => {
  const { senses } = sensesOf(title);
  if (senses.has("date") || senses.has("ratio")) return true;
  const said = names.map((name) => [...sensesOf(name).senses]);
  return said.every((one, at) => at === 0 || one.some((sense) => said[0]?.includes(sense)));
};

const joined = (before: string, name: string, after: string): string =>
  `${before} ${name} ${after}`
    .replace(/\(\s*(\S+)\s*\)/g, "($1)")
    .replace(/\s+/g, " ")
    .trim();

const READING = /^(?:[<>≥≤]?\s*[-+]?[\d.,]+|OL|[-–—]{1,3})$/i;
const UNIT = /^(.*?[\d)])\s*([\p{L}µμΩΩ°%]{1,8})$/u;

/** The readings of a cell, each with the unit that stands after the last of them; undefined where they are not so many. */
const partedCell = (cell: string, many: number): readonly string[] | undefined => {
  if (cell.length > LONGEST) return undefined;
  const [, numbers = cell, unit = ""] = UNIT.exec(cell.trim()) ?? [];
  const parts = numbers.split(MARK).map((part) => part.trim());
  return parts.length === many && parts.every((part) => READING.test(part))
    ? parts.map((part) => (unit === "" ? part : `${part} ${unit}`))
    : undefined;
};

/** The columns of which a title names several things and most cells below hold as many readings, the first of them right below: those of the first line of titles that has one. */
const partedColumns = (first: readonly TextRow[]): readonly Parted[] => {
  for (const [head, { cells }] of first.entries()) {
    const found = cells.flatMap((title, index): Parted[] => {
      const titles = /[-/,;–]/.test(title) ? partedTitle(title) : undefined;
      if (titles === undefined) return [];
      const below = first.slice(head + 1).flatMap((row) => row.cells[index] || []);
      const isParted = (cell: string) => partedCell(cell, titles.length) !== undefined;
      const parted = below.filter(isParted).length;
      return isParted(below[0] ?? "") && parted >= MOST * below.length
        ? [{ index, head, titles }]
        : [];
    });
    if (found.length > 0) return found;
  }
  return [];
};

/**
 * Rows of which columns hold several readings in each cell, with a column for each of them: `31 / 32 / 30`
 * under `R-Y-B (µΩ)`. A cell that holds fewer is not read; it is told at its line.
 *
 * @param first the first rows, by which they are known
 * @returns undefined where no column is so
 */
export const partedCells = (
  first: readonly TextRow[],
): ((rows: Iterable<TextRow>) => Iterable<TextRow>) | undefined => {
  const found = partedColumns(first);
  const [one] = found;
  if (one === undefined) return undefined;
  const line = first[one.head]?.line ?? 0;
  const byIndex = new Map(found.map((parted) => [parted.index, parted]));
  const width = Math.max(...byIndex.keys()) + 1;
  return function* (rows) {
    for (const row of rows) {
      const cells = Array.from({ length: Math.max(width, row.cells.length) }, (_, at) => {
        const parted = byIndex.get(at);
        const cell = row.cells[at] ?? "";
        return parted === undefined ? [cell] : partsOf(cell, parted, row.line - line);
      });
      yield { line: row.line, cells: cells.flat() };
    }
  };
};

/** What stands in the columns of a parted cell, so many lines below the titles. */
const partsOf = (cell: string, { titles }: Parted, below: number): readonly string[] => {
  if (below === 0) return titles;
  const parts = partedCell(cell, titles.length);
  if (parts) return parts;
  if (cell === "" || below < 0) return [cell, ...titles.slice(1).map(() => "")];
  return titles.map(() => (/\d/.test(cell) ? `${cell} (of ${titles.length})` : cell));
};
