import type { Area } from "../sheets/cells/area";
import type { Unseen } from "../sheets/snapshot";
import type { CellGrid } from "./scan/grid";
import type { StoredFormulas } from "./scan/scanSheet";

/**
 * What a file holds of one sheet: plain data, so that a long workbook can be read sheet by sheet, each by
 * whichever thread is free.
 */
export interface StoredSheet {
  readonly name: string;
  readonly hidden: boolean;
  readonly cells: CellGrid;
  readonly formulas: StoredFormulas;
  /** By `row,column`, from 0. */
  readonly notes: ReadonlyMap<string, string>;
  readonly hiddenRows: readonly number[];
  /** First and last of each run of columns that are hidden. */
  readonly hiddenColumns: readonly (readonly [number, number])[];
  /** By `row,column`, from 0: values that are not seen as they are. */
  readonly unseen: ReadonlyMap<string, Unseen>;
  readonly merges: readonly Area[];
  readonly tables: readonly StoredTable[];
}

export interface StoredTable {
  readonly name: string;
  /** Sheet row and column of the first header cell, from 0. */
  readonly top: number;
  readonly left: number;
  readonly headers: readonly string[];
  readonly rowCount: number;
}
