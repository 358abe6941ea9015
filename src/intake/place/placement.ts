import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import type { CellValue } from "../../records/kind";
import type { RecordRows } from "../rows/recordRows";

/** Where a reading comes from: the export and its line, from 1, and when it was taken. */
export interface Origin {
  readonly file: string;
  readonly line: number;
  /** Serial day, with the time of day as its fraction where that is known. */
  readonly when?: number;
}

/** One cell of a record table, with what it holds and what the export has for it. */
export interface PlacedCell<T extends RecordRows> {
  readonly table: T;
  /** Row within the table's body, from 0. */
  readonly row: number;
  /** Column id. */
  readonly column: string;
  readonly old: CellValue;
  readonly value: CellValue;
  readonly source: Origin;
}

/** A cell that holds something else, and whether what it holds is known to be of an earlier or later day. */
export interface Conflict<T extends RecordRows> extends PlacedCell<T> {
  readonly stands: "earlier" | "later" | "open";
}

/** A line, or one cell of a line, that is not placed, and in a sentence why and what would be right. */
export interface Unplaced {
  readonly source: Origin;
  readonly reason: Said<Told>;
}

/** Which word of a line is not understood. */
export type Asked = "object" | "part" | "position" | "stage" | "test";

/**
 * A name that no row has, and those that come nearest, best first. Nothing is placed by a suggestion: who
 * confirms it places the export again with `means`.
 */
export interface Suggestion {
  readonly field: Asked;
  readonly written: string;
  readonly candidates: readonly { readonly name: string; readonly score: number }[];
  readonly lines: readonly number[];
}

/** A reading that another has taken the place of, for the history. */
export interface Kept<T extends RecordRows> {
  readonly table: T;
  readonly row: number;
  readonly column: string;
  readonly value: CellValue;
  readonly when?: number;
  /** File and line, or what the record's origin said. */
  readonly source: string;
}

/** What placing an export comes to. Nothing is written yet. */
export interface Placement<T extends RecordRows> {
  /** Cells to write, the origin column's included. */
  readonly placed: readonly PlacedCell<T>[];
  /** Cells that hold the same already. */
  readonly same: readonly PlacedCell<T>[];
  /** Cells that hold something else. Their whole line is held back; none where replacing was asked for. */
  readonly conflicts: readonly Conflict<T>[];
  /** Everything that is not placed, also what is suggested. */
  readonly unplaced: readonly Unplaced[];
  readonly suggested: readonly Suggestion[];
  /** Readings that go to the history when `placed` is written. */
  readonly kept: readonly Kept<T>[];
}
