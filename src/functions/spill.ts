import { type Result, refuse } from "../quantities/result";
import { type Cell, errorIn, isBlank, plain, refused, toCell } from "./excel";
import type { Input } from "./inputs";

type Inputs<T extends readonly unknown[]> = { readonly [K in keyof T]: Input<T[K]> };

/**
 * Computes a worksheet function cell by cell: single cells and single rows or columns stand for
 * every cell beside ranges.
 *
 * A blank argument gives a blank, an error is handed on, and a refusal becomes an error of its kind.
 *
 * @returns a matrix where any argument is a range, else a single cell
 */
export const spill = <T extends readonly unknown[]>(
  inputs: Inputs<T>,
  compute: (...values: T) => Result<unknown>,
): unknown[][] => {
  const list = inputs as readonly Input<unknown>[];
  const answerTo = (cells: readonly Cell[]) =>
    inOneCell(list, cells, compute as unknown as (...values: unknown[]) => Result<unknown>);
  // Excel hands ranges over, and gets one back; single cells come from our own code and tests.
  if (!list.some(({ cells }) => Array.isArray(cells)))
    return answerTo(list.map(({ cells }) => cells)) as unknown[][];

  const ranges = list.map(({ cells }) => rangeOf(cells));
  const rows = greatest(ranges.map((range) => range.rows));
  const columns = greatest(ranges.map((range) => range.columns));
  const fits = (size: number, whole: number) => size === 1 || size === whole;
  if (ranges.some((range) => !fits(range.rows, rows) || !fits(range.columns, columns))) {
    const shapes = ranges.map((range) => [range.rows, range.columns] as const);
    return [[refused(refuse("wrong", (text) => text.functions.shapes(shapes)))]];
  }
  const outcomes: Cell[][] = [];
  for (let row = 0; row < rows; row++) {
    const line: Cell[] = [];
    for (let column = 0; column < columns; column++)
      line.push(answerTo(ranges.map((range) => cellAt(range, row, column))));
    outcomes.push(line);
  }
  return outcomes;
};

/** One outcome from one cell for each argument: errors come first, then blanks, then what cannot be read. */
const inOneCell = (
  inputs: readonly Input<unknown>[],
  cells: readonly Cell[],
  compute: (...values: unknown[]) => Result<unknown>,
): Cell => {
  const plains = cells.map(plain);
  for (const cell of plains) {
    const error = errorIn(cell);
    if (error !== undefined) return error;
  }
  if (inputs.some((input, i) => !("blank" in input) && isBlank(plains[i]))) return "";
  const values: unknown[] = [];
  for (const [i, { name, blank, read }] of inputs.entries()) {
    const cell = plains[i];
    if (isBlank(cell)) {
      values.push(blank);
      continue;
    }
    const found = read(cell);
    if (!found.ok)
      return refused(
        refuse(found.kind, (text) => text.functions.of(text.name(name), found.say(text))),
      );
    values.push(found.value);
  }
  return toCell(compute(...values));
};

interface Range {
  readonly cells: readonly unknown[];
  readonly rows: number;
  readonly columns: number;
}

const rangeOf = (argument: unknown): Range => {
  const cells: readonly unknown[] = Array.isArray(argument) ? argument : [argument];
  let columns = 1;
  for (const line of cells) if (Array.isArray(line)) columns = Math.max(columns, line.length);
  return { cells, rows: Math.max(1, cells.length), columns };
};

/** The cell of a range; a single row or column stands for every other. */
const cellAt = ({ cells, rows, columns }: Range, row: number, column: number): Cell => {
  const line = cells[rows === 1 ? 0 : row];
  return Array.isArray(line) ? line[columns === 1 ? 0 : column] : line;
};

const greatest = (sizes: readonly number[]): number =>
  sizes.reduce((most, size) => Math.max(most, size), 1);
