import type { CellValue } from "../../records/kind";

/**
 * The cells of a sheet that hold something, row by row: plain data in little room, that one thread can
 * hand to another. Nothing of what it was made from is held by it.
 */
export interface CellGrid {
  /** By row from 0 where its cells begin, and where the last row's end. */
  readonly starts: Uint32Array<ArrayBuffer>;
  /** For each cell its column, rising within a row. */
  readonly columns: Uint16Array<ArrayBuffer>;
  /** For each cell its place among the values, or `NUMBER`. */
  readonly codes: Uint32Array<ArrayBuffer>;
  /** For each cell that is a number, the number. */
  readonly numbers: Float64Array<ArrayBuffer>;
  /** For each cell the number of its formula, or 0. */
  readonly formulas: Uint32Array<ArrayBuffer>;
  /** What is no number: blank first, then each text and truth value, as a rule once. */
  readonly values: readonly CellValue[];
}

export interface GridMark {
  readonly count: number;
  readonly rows: number;
  readonly inOrder: boolean;
}

const NUMBER = 0xffff_ffff;
/** So many texts are known at once; a sheet has few that are written again and again. */
const MAX_KNOWN = 100_000;

/** Makes a grid from cells as they come, each row begun before its cells. */
export class GridBuilder {
  private count = 0;
  private columns = new Uint16Array(1024);
  private codes = new Uint32Array(1024);
  private numbers = new Float64Array(1024);
  private formulas = new Uint32Array(1024);
  private readonly rows: number[] = [];
  private readonly firsts: number[] = [];
  private inOrder = true;
  private readonly values: CellValue[] = [null];
  private readonly known = new Map<string | boolean, number>();

  get size(): number {
    return this.count;
  }

  row(row: number): void {
    if (row <= (this.rows.at(-1) ?? -1)) this.inOrder = false;
    this.rows.push(row);
    this.firsts.push(this.count);
  }

  /** What there is so far, to go back to. */
  mark(): GridMark {
    return { count: this.count, rows: this.rows.length, inOrder: this.inOrder };
  }

  backTo({ count, rows, inOrder }: GridMark): void {
    this.count = count;
    this.inOrder = inOrder;
    this.rows.length = rows;
    this.firsts.length = rows;
  }

  number(column: number, value: number, formula = 0): void {
    this.cell(column, NUMBER, formula);
    this.numbers[this.count - 1] = value;
  }

  /** @param code as `code` gives it; 0 for a cell that is blank but for its formula */
  cell(column: number, code: number, formula = 0): void {
    const at = this.count++;
    if (at === this.codes.length) this.grow();
    const first = this.firsts[this.firsts.length - 1] ?? 0;
    if (at > first && column <= (this.columns[at - 1] ?? 0)) this.inOrder = false;
    this.columns[at] = column;
    this.codes[at] = code;
    this.formulas[at] = formula;
  }

  /** The code of a text or truth value. */
  code(value: string | boolean): number {
    const before = this.known.get(value);
    if (before !== undefined) return before;
    const code = this.values.push(value) - 1;
    if (this.known.size < MAX_KNOWN) this.known.set(value, code);
    return code;
  }

  private grow(): void {
    const length = this.codes.length * 2;
    const longer = <A extends { set(from: A): void }>(made: A, from: A): A => {
      made.set(from);
      return made;
    };
    this.columns = longer(new Uint16Array(length), this.columns);
    this.codes = longer(new Uint32Array(length), this.codes);
    this.numbers = longer(new Float64Array(length), this.numbers);
    this.formulas = longer(new Uint32Array(length), this.formulas);
  }

  grid(): CellGrid {
    if (!this.inOrder) this.sort();
    const { count, rows, firsts } = this;
    let last = rows.length - 1;
    while (last >= 0 && firsts[last] === count) last -= 1;
    const starts = new Uint32Array((last < 0 ? 0 : (rows[last] ?? 0) + 1) + 1);
    let at = 0;
    for (let row = 0; row + 1 < starts.length; row++) {
      starts[row] = firsts[at] ?? count;
      if (rows[at] === row) at += 1;
    }
    starts[starts.length - 1] = last < 0 ? 0 : count;
    return {
      starts,
      columns: this.columns.slice(0, count),
      codes: this.codes.slice(0, count),
      numbers: this.numbers.slice(0, count),
      formulas: this.formulas.slice(0, count),
      values: this.values,
    };
  }

  /** Some programs write rows or cells in another order, or a row in two pieces; what comes later stands. */
  private sort(): void {
    const { columns, codes, numbers, formulas, rows, firsts, count } = this;
    const places = new Map<number, { row: number; at: number }>();
    for (const [index, row] of rows.entries())
      for (let at = firsts[index] ?? 0; at < (firsts[index + 1] ?? count); at++)
        places.set(row * 16_384 + (columns[at] ?? 0), { row, at });
    const sorted = [...places].sort(([one], [other]) => one - other).map(([, place]) => place);
    const of = <A extends Uint16Array | Uint32Array | Float64Array>(from: A): A =>
      from
        .slice()
        .fill(0)
        .map((_, index) => from[sorted[index]?.at ?? -1] ?? 0) as A;
    [this.columns, this.codes, this.numbers, this.formulas] = [
      of(columns),
      of(codes),
      of(numbers),
      of(formulas),
    ];
    this.count = sorted.length;
    rows.length = 0;
    firsts.length = 0;
    for (const [at, { row }] of sorted.entries())
      if (row !== rows.at(-1)) {
        rows.push(row);
        firsts.push(at);
      }
    this.inOrder = true;
  }
}

/** Where a cell stands in a grid, by row and column from 0; -1 where it holds nothing. */
export function placeIn({ starts, columns }: CellGrid, row: number, column: number): number {
  let from = starts[row] ?? 0;
  let to = starts[row + 1] ?? 0;
  // As a rule a row holds every cell from its first on.
  if (from + column < to && columns[from + column] === column) return from + column;
  while (from < to) {
    const middle = (from + to) >> 1;
    const there = columns[middle] ?? 0;
    if (there === column) return middle;
    if (there < column) from = middle + 1;
    else to = middle;
  }
  return -1;
}

/** The cell of a grid at a row and column from 0; blank beyond its end. */
export const cellIn =
  (grid: CellGrid) =>
  (row: number, column: number): CellValue => {
    const at = placeIn(grid, row, column);
    if (at < 0) return null;
    const code = grid.codes[at] ?? 0;
    return code === NUMBER ? (grid.numbers[at] ?? null) : (grid.values[code] ?? null);
  };

/** Columns of a grid as far as they are used. */
export function widthOf({ starts, columns }: CellGrid): number {
  let width = 0;
  for (let row = 1; row < starts.length; row++) {
    const end = starts[row] ?? 0;
    if (end > (starts[row - 1] ?? 0)) width = Math.max(width, (columns[end - 1] ?? 0) + 1);
  }
  return width;
}

/** What of a grid is handed over, not copied, from one thread to another. */
export const buffersOf = ({ starts, columns, codes, numbers, formulas }: CellGrid): ArrayBuffer[] =>
  [starts, columns, codes, numbers, formulas].map(({ buffer }) => buffer);
