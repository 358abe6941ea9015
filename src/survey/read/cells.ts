import { readDate } from "../../intake/words/readDate";
import type { DateOrder } from "../../quantities/dates";
import { decimalWatch } from "../../quantities/reading/decimalMark";
import type { Bound } from "../../quantities/reading/reading";
import { type DecimalMark, readNumber } from "../../quantities/reading/readNumber";
import { readUnit } from "../../quantities/reading/readUnit";
import { splitReading } from "../../quantities/reading/splitReading";
import { type Unit, unitSize } from "../../quantities/units";
import type { CellValue } from "../../records/kind";
import { a1 } from "../../sheets/cells/address";
import { ownCells } from "../../sheets/cells/ownCells";
import type { SheetSnapshot } from "../../sheets/snapshot";
import { latin } from "../understand/localWords";
import { isWord, verdictIn } from "../words/sheetWords";
import { readLegend } from "./readLegend";

/** One filled cell, understood as far as it can be by itself. */
export interface Cell {
  readonly row: number;
  readonly column: number;
  readonly address: string;
  readonly value: Exclude<CellValue, null | undefined>;
  /** What is written, without spaces around it. */
  readonly text: string;
  /** The number of a plain number, or of a text that is a number with or without its unit. */
  readonly number?: number;
  /** The unit that the cell itself carries. */
  readonly unit?: Unit;
  readonly bound?: Bound;
  /** A day as a serial number, of a text that is a date. */
  readonly day?: number;
  readonly formula?: string;
  /** What its letters stand for, where the sheet says so: "NC = does not conform". */
  readonly says?: "Pass" | "Fail" | "NotApplicable";
  /** Whether days such as 03/11/2026 have the day first in this workbook. */
  readonly order: DateOrder;
}

/** A sheet's filled cells, rows and columns from 0. */
export interface SheetView {
  readonly name: string;
  readonly rowCount: number;
  readonly columnCount: number;
  readonly at: (row: number, column: number) => Cell | undefined;
  /** The cell that is shown here: of joined cells the first. */
  readonly shown: (row: number, column: number) => Cell | undefined;
  readonly rows: readonly (readonly Cell[])[];
  readonly note: (row: number, column: number) => string | undefined;
  /** Whether rows are the sheet's columns. */
  readonly turned: boolean;
  readonly order: DateOrder;
  /** Address on the sheet of a place of the view. */
  readonly address: (row: number, column: number) => string;
  /** The column of the view in which a cell stands. */
  readonly columnOf: (cell: Cell) => number;
  /** The row of the view in which a cell stands. */
  readonly rowOf: (cell: Cell) => number;
}

/** Cells up to which a sheet is read; one with more is no sheet of records that somebody keeps by hand. */
const MAX_CELLS = 400_000;

/** How numbers and dates are written on a sheet. */
interface Habits {
  readonly decimal: DecimalMark | undefined;
  readonly order: DateOrder | undefined;
}

const habitsOf = (texts: readonly string[], order: DateOrder): Habits => {
  const watch = decimalWatch();
  for (const text of texts) if (/\d/.test(text) && text.length < 30) watch.note(text, 0);
  return {
    decimal: watch.evidence().mark,
    order,
  };
};

/** A text as a number with its unit, where it is nothing else. */
export const quantityIn = (
  text: string,
  decimal?: DecimalMark,
): { readonly number: number; readonly unit?: Unit; readonly bound: Bound } | undefined => {
  const parts = splitReading(text);
  if (!parts || parts.number === "") return undefined;
  const number = readNumber(parts.number, parts.exponent !== "");
  if (!number) return undefined;
  if (/^[-–/]/.test(parts.unit)) return undefined;
  const unit = parts.unit === "" ? undefined : readUnit(parts.unit.replace(/\s*\b(?:AC|DC)$/i, ""));
  if (unit && !unit.ok) return undefined;
  const { ambiguous, plain } = number;
  const grouped = ambiguous !== undefined && (decimal ?? ".") !== ambiguous;
  const digits = grouped ? plain.replace(".", "") : plain;
  const exponent = parts.exponent && `e${parts.exponent}`;
  return {
    number: Number(`${parts.sign}${digits}${exponent}`),
    unit: unit?.value,
    bound: parts.bound === ">" || parts.over ? "above" : parts.bound === "<" ? "below" : "exact",
  };
};

const textCell = (
  text: string,
  { decimal, order }: Habits,
): Pick<Cell, "number" | "unit" | "bound" | "day"> => {
  if (text.length > 40) return {};
  const day = /\d/.test(text)
    ? readDate(text.replace(/^\p{L}{2,4}[.,]? (?=\d)/u, ""), order ?? "day-first")
    : undefined;
  // A bare number of five digits is a number here, and a date only under a title that says so.
  if (day?.ok && !/^\d+([.,]\d+)?$/.test(text)) return { day: day.value };
  return quantityIn(text.replace(MEGS, "$1$2Ω"), decimal) ?? {};
};

/** A resistance with the letter of its prefix alone: "22.4 G", "640 M". */
const MEGS = /^([<>]?\s?\d[\d.,]* ?)([GM])$/;

type Stored = NonNullable<SheetSnapshot["cells"]>;

/** Every place of a sheet from the top left. */
function* placesOf({
  rowCount,
  columnCount,
}: Stored): Generator<readonly [row: number, column: number]> {
  for (let row = 0; row < rowCount; row++)
    for (let column = 0; column < columnCount; column++) yield [row, column];
}

const typed = (value: CellValue, text: string, habits: Habits): Partial<Cell> => {
  if (typeof value === "number") return { number: value };
  return typeof value === "string" ? textCell(text, habits) : {};
};

/** What a cell stands for that says "as above". */
const asAbove = ({ formula: _, ...above }: Cell, row: number): Cell => ({
  ...above,
  row,
  address: a1(row, above.column),
});

/** Marks and words for "as above". */
const DITTO =
  /^(?:["″”“〃]|''|,,|-\s?["″”]\s?-|ditto|do\.|dto\.?|dito|[ií]dem|id\.|same(?: as above)?|as above|wie oben|igual)$/iu;

/** The filled cells of a sheet by their number in it. */
const filledOf = (cells: Stored, order: DateOrder): Map<number, Cell> => {
  const texts = [...placesOf(cells)].flatMap(([row, column]) => {
    const value = cells.cell(row, column);
    return typeof value === "string" ? [value.trim()] : [];
  });
  const habits = habitsOf(texts, order);
  const legend = readLegend(texts);
  const filled = new Map<number, Cell>();
  for (const [row, column] of placesOf(cells)) {
    const value = cells.cell(row, column);
    const text = latin(String(value ?? ""))
      .replace(/\s+/g, " ")
      .trim();
    if (value === null || value === undefined || text === "") continue;
    const above = filled.get((row - 1) * cells.columnCount + column);
    if (above && DITTO.test(text)) {
      filled.set(row * cells.columnCount + column, asAbove(above, row));
      continue;
    }
    filled.set(row * cells.columnCount + column, {
      row,
      column,
      address: a1(row, column),
      value,
      text,
      ...(legend.has(text) ? { says: legend.get(text) } : typed(value, text, habits)),
      formula: cells.formula(row, column),
      order,
    });
  }
  return filled;
};

/** The first cell of those that a cell is joined with, by its number in the sheet. */
const joinedOf = ({ merges = [], rowCount, columnCount }: Stored): ReadonlyMap<number, number> => {
  const first = new Map<number, number>();
  for (const { top, left, bottom, right } of merges)
    for (let row = top; row <= Math.min(bottom, rowCount - 1); row++)
      for (let column = left; column <= Math.min(right, columnCount - 1); column++)
        first.set(row * columnCount + column, top * columnCount + left);
  return first;
};

/**
 * The cells of a sheet as the survey sees them.
 *
 * @param order of day and month, as the workbook's own dates show it
 * @returns undefined for a sheet that is empty, or larger than any that is kept by hand
 */
export function viewSheet(sheet: SheetSnapshot, order: DateOrder): SheetView | undefined {
  const { name } = sheet;
  const cells = ownCells(sheet);
  if (!cells || cells.rowCount * cells.columnCount > MAX_CELLS * 20) return undefined;
  const { rowCount, columnCount } = cells;
  const filled = filledOf(cells, order);
  if (filled.size === 0 || filled.size > MAX_CELLS) return undefined;
  const joined = joinedOf(cells);
  const rows: Cell[][] = Array.from({ length: rowCount }, () => []);
  for (const cell of filled.values()) rows[cell.row]?.push(cell);
  const numberOf = (row: number, column: number) =>
    column < 0 || column >= columnCount ? -1 : row * columnCount + column;
  const at = (row: number, column: number) => filled.get(numberOf(row, column));
  return {
    name,
    rowCount,
    columnCount,
    at,
    shown: (row, column) => {
      const first = joined.get(numberOf(row, column));
      return first === undefined ? at(row, column) : filled.get(first);
    },
    rows,
    note: (row, column) => cells.note?.(row, column),
    turned: false,
    order,
    address: a1,
    columnOf: ({ column }) => column,
    rowOf: ({ row }) => row,
  };
}

/** The same sheet with its columns as rows: what stands across is then read as what stands down. */
export const turn = (view: SheetView): SheetView =>
  windowOf(
    view,
    Array.from({ length: view.columnCount }, (_, index) => index),
    Array.from({ length: view.rowCount }, (_, index) => index),
  );

/**
 * Some lines and columns of a sheet as a sheet of its own, turned: its rows are these columns, and its
 * columns these lines.
 */
export function windowOf(
  view: SheetView,
  columns: readonly number[],
  lines: readonly number[],
): SheetView {
  const lineOf = new Map(lines.map((line, index) => [line, index]));
  const placeOf = new Map(columns.map((column, index) => [column, index]));
  const place = (row: number, column: number) => [lines[column] ?? -1, columns[row] ?? -1] as const;
  return {
    name: view.name,
    rowCount: columns.length,
    columnCount: lines.length,
    at: (row, column) => view.at(...place(row, column)),
    shown: (row, column) => view.shown(...place(row, column)),
    rows: columns.map((column) => lines.flatMap((line) => view.at(line, column) ?? [])),
    note: (row, column) => view.note(...place(row, column)),
    turned: true,
    order: view.order,
    address: (row, column) => view.address(...place(row, column)),
    columnOf: (cell) => lineOf.get(view.rowOf(cell)) ?? -1,
    rowOf: (cell) => placeOf.get(view.columnOf(cell)) ?? -1,
  };
}

/** The verdict that a cell states: in letters of the sheet's own, or in words. */
export const statedVerdict = ({ says, text }: Cell): "Pass" | "Fail" | undefined =>
  says === undefined ? verdictIn(text) : says === "NotApplicable" ? undefined : says;

/** Whether a cell holds a value, and no words: a number, a quantity, a date, a verdict, a yes or no. */
export const isValue = (cell: Cell): boolean =>
  cell.number !== undefined ||
  cell.says !== undefined ||
  cell.day !== undefined ||
  typeof cell.value === "boolean" ||
  isAnswer(cell.text);

const isAnswer = (text: string): boolean =>
  text.length < 24 &&
  (verdictIn(text) !== undefined ||
    isWord(text, "yes") ||
    isWord(text, "no") ||
    isWord(text, "notApplicable") ||
    isWord(text, "notDone") ||
    /^(?:[-–—/.*?]+|x)$/i.test(text));

/** A number in the unit of its quantity without a prefix: ohms, volts, amperes, seconds. */
export const inBaseUnit = (number: number, unit: Unit): number => {
  const { exponent, times = 1, plus = 0 } = unitSize(unit);
  return (number + plus) * times * 10 ** exponent;
};
