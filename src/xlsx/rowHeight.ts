import type { CellValue } from "../records/kind";

const [LINE, BESIDE] = [12, 4];
/** Letters of 9 points that a column holds beside each other, over its width in characters of 10 points. */
const LETTERS = 1.25;
/** No column is too narrow for so many letters. */
const SHORT = 6;

/**
 * Lines that a text takes in a column, parted at its spaces as a spreadsheet does.
 *
 * @param width of the column, in characters
 * @example linesIn("maximum: data sheet", 14) // 2
 */
export function linesIn(text: string, width: number): number {
  const room = Math.max(1, Math.floor((width - 2) * LETTERS));
  if (text.length <= room && !text.includes("\n")) return 1;
  return text.split("\n").reduce((lines, paragraph) => {
    let [count, used] = [1, 0];
    for (const { length } of paragraph.split(" ")) {
      if (used > 0 && used + 1 + length > room) [count, used] = [count + 1, 0];
      used += (used > 0 ? 1 : 0) + length;
      count += Math.ceil(used / room) - 1;
      used = ((used - 1) % room) + 1;
    }
    return lines + Math.max(1, count);
  }, 0);
}

/** A cell whose text goes on in a further line, and the width of its column in characters. */
export interface WrappedCell {
  readonly value: CellValue;
  readonly width: number;
}

/**
 * The height of a row in points, where its text needs more than a line; undefined where it does not. A row
 * without a height is shown one line high by programs that take heights as they are.
 */
export function rowHeight(cells: readonly WrappedCell[]): number | undefined {
  const lines = Math.max(
    1,
    ...cells.map(({ value, width }) =>
      typeof value === "string" && value.length >= SHORT ? linesIn(value, width) : 1,
    ),
  );
  return lines > 1 ? lines * LINE + BESIDE : undefined;
}
