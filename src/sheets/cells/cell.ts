import { type CellValue, isBlank } from "../../records/kind";

/** One cell of a table's body to be written: a value, or a formula with the value it computes to. */
export interface CellWrite {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
  readonly formula?: string;
}

/** Whether two cells are stored alike: blank text and no value are, and numbers to the last digits that a file keeps. */
export const isSameStored = (one: CellValue, other: CellValue): boolean =>
  isBlank(one) || isBlank(other)
    ? isBlank(one) && isBlank(other)
    : typeof one === "number" && typeof other === "number"
      ? one === other || Math.abs(one - other) <= 1e-12 * Math.max(Math.abs(one), Math.abs(other))
      : one === other;
