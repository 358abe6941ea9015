import type { CellValue } from "../records/kind";

/**
 * Rows of cells, each as long as it is: plain data in little room, that one thread can hand to another.
 * Nothing of what it was made from is held by it.
 */
export interface CellGrid {
  /** Where each row begins, and where the last ends. */
  readonly starts: Uint32Array<ArrayBuffer>;
  /** For each cell its place among the values, or `NUMBER`. */
  readonly codes: Uint32Array<ArrayBuffer>;
  /** For each cell that is a number, the number. */
  readonly numbers: Float64Array<ArrayBuffer>;
  /** What is no number: blank first, then each text and truth value, as a rule once. */
  readonly values: readonly CellValue[];
}

const NUMBER = 0xffff_ffff;
/** So many texts are known at once; a sheet has few that are written again and again. */
const MAX_KNOWN = 100_000;

/**
 * Packs rows of cells; a row or cell that is not there is blank.
 *
 * @param of what is kept of a cell
 */
export function gridOf<Cell>(
  rows: readonly (readonly Cell[] | undefined)[],
  of: (cell: Cell | undefined) => CellValue,
): CellGrid {
  const starts = new Uint32Array(rows.length + 1);
  for (let row = 0; row < rows.length; row++)
    starts[row + 1] = (starts[row] ?? 0) + (rows[row]?.length ?? 0);
  const count = starts[rows.length] ?? 0;
  const codes = new Uint32Array(count);
  const numbers = new Float64Array(count);
  const { values, codeOf } = valueCodes();
  let at = 0;
  for (const row of rows)
    for (let column = 0; column < (row?.length ?? 0); column++, at++) {
      const value = of(row?.[column]);
      if (typeof value === "number") {
        codes[at] = NUMBER;
        numbers[at] = value;
      } else if (value !== null) codes[at] = codeOf(value);
    }
  return { starts, codes, numbers, values };
}

/** Texts and truth values with a code for each, as a rule each once; blank has the code 0. */
function valueCodes() {
  const values: CellValue[] = [null];
  const known = new Map<string | boolean, number>();
  const codeOf = (value: string | boolean): number => {
    const before = known.get(value);
    if (before !== undefined) return before;
    // A text put together and taken apart again is a copy, no window on the file that it was read from.
    const own = typeof value === "string" ? ` ${value}`.slice(1) : value;
    const code = values.push(own) - 1;
    if (known.size < MAX_KNOWN) known.set(own, code);
    return code;
  };
  return { values, codeOf };
}

/** The cell of a grid at a row and column from 0; blank beyond its end. */
export const cellIn =
  ({ starts, codes, numbers, values }: CellGrid) =>
  (row: number, column: number): CellValue => {
    const at = (starts[row] ?? 0) + column;
    if (column < 0 || at >= (starts[row + 1] ?? 0)) return null;
    const code = codes[at] ?? 0;
    return code === NUMBER ? (numbers[at] ?? null) : (values[code] ?? null);
  };

/** What of a grid is handed over, not copied, from one thread to another. */
export const buffersOf = ({ starts, codes, numbers }: CellGrid): ArrayBuffer[] =>
  [starts, codes, numbers].map(({ buffer }) => buffer);
