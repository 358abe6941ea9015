import type { TextRow } from "../text/delimited";
import { countFilled } from "../text/textCells";
import { isPerson } from "../understand/textFacts";
import { readDate } from "../words/readDate";
import type { Head, LayoutOptions } from "./head";
import { testColumn } from "./testsBeside";

/** A log of which the panel is written once above the lines of several tests. */
interface HeldLog {
  /** The last line of its titles. */
  readonly head: number;
  readonly test: number;
  readonly panel: number;
  /** The panel's column and those that are filled on the same lines: the day, the tester. */
  readonly held: readonly number[];
}

/**
 * Rows of a log of several tests whose panel is written once above all that was done on it, with the panel,
 * its day and its tester on each line of them. A line that does not follow the one above right away holds
 * nothing.
 *
 * @param first the first rows, by which it is known
 * @returns undefined where it is no such log
 */
export const heldInLog = (
  first: readonly TextRow[],
  head: Head | undefined,
  options: LayoutOptions,
): ((rows: Iterable<TextRow>) => Iterable<TextRow>) | undefined => {
  const found = head && logIn(first, head, options);
  if (found === undefined) return undefined;
  return function* (rows) {
    let above: TextRow | undefined;
    for (const row of rows) {
      const now = row.line > found.head ? withNames(row, above, found) : row;
      yield now;
      above = now;
    }
  };
};

/** A line with the names of the one above, where it has none and goes on from it. */
const withNames = (
  row: TextRow,
  above: TextRow | undefined,
  { head, test, panel, held }: HeldLog,
): TextRow => {
  const goesOn =
    above !== undefined &&
    above.line > head &&
    above.line === row.line - 1 &&
    (above.cells[test] ?? "") !== "" &&
    (row.cells[test] ?? "") !== "" &&
    (row.cells[panel] ?? "") === "";
  if (!goesOn) return row;
  const cells = [...row.cells];
  for (const index of held) if (cells[index] === "") cells[index] = above.cells[index] ?? "";
  return { line: row.line, cells };
};

const logIn = (
  first: readonly TextRow[],
  head: Head,
  { objectOf = () => undefined }: LayoutOptions,
): HeldLog | undefined => {
  const last = head.line + head.lines - 1 + (head.units ? 1 : 0);
  const below = first.filter(({ line, cells }) => line > last && countFilled(cells) > 1);
  const test = testColumn(
    head.texts.at(-1) ?? [],
    below.map(({ cells }) => cells),
  );
  if (test === undefined) return undefined;
  const rows = below.map(({ cells }) => cells).filter((cells) => (cells[test] ?? "") !== "");
  const textsOf = (index: number) => rows.flatMap((cells) => cells[index] || []);
  const areAll = (index: number, is: (text: string) => boolean) =>
    index !== test && textsOf(index).length > 0 && textsOf(index).every(is);
  const columns = head.columns.map(({ index }) => index);
  const panel = columns.find((index) => areAll(index, (text) => objectOf(text) !== undefined));
  if (panel === undefined || !isOverTests(rows, test, panel)) return undefined;
  const isSame = (index: number) =>
    rows.every((cells) => ((cells[index] ?? "") === "") === ((cells[panel] ?? "") === ""));
  const held = columns.filter(
    (index) =>
      isSame(index) && areAll(index, (text) => isHeld(text) || objectOf(text) !== undefined),
  );
  return { head: last, test, panel, held };
};

/** Whether the panel stands on the first line, and on none of those below it on which the test is another. */
const isOverTests = (
  rows: readonly (readonly string[])[],
  test: number,
  panel: number,
): boolean => {
  const isBlank = (cells: readonly string[]) => (cells[panel] ?? "") === "";
  return (
    rows[0] !== undefined &&
    !isBlank(rows[0]) &&
    rows.filter(isBlank).length >= rows.length / 2 &&
    rows.some((cells, at) => at > 0 && isBlank(cells) && cells[test] !== rows[at - 1]?.[test])
  );
};

const isHeld = (text: string): boolean =>
  isPerson(text) || readDate(text, "day-first").ok || readDate(text, "month-first").ok;
