import type { CellValue } from "../records/kind";
import type { RecordRows } from "./rowFinder";

/** Where a reading comes from: the export and its line, from 1. */
export interface Origin {
  readonly file: string;
  readonly line: number;
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

/** A line, or one cell of a line, that is not placed, and in a sentence why and what would be right. */
export interface Unplaced {
  readonly source: Origin;
  readonly reason: string;
}

/** What placing an export comes to. Nothing is written yet. */
export interface Placement<T extends RecordRows> {
  /** Cells to write, the origin column's included. */
  readonly placed: readonly PlacedCell<T>[];
  /** Cells that hold the same already. */
  readonly same: readonly PlacedCell<T>[];
  /** Cells that hold something else. Their whole line is held back; none where replacing was asked for. */
  readonly conflicts: readonly PlacedCell<T>[];
  readonly unplaced: readonly Unplaced[];
}
