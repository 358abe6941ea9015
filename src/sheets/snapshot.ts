import type { Lineup } from "../lineup/lineup";
import type { CellValue } from "../records/kind";

/** A table as it stands in a workbook. Rows and columns count from 0 within its body. */
export interface TableSnapshot {
  readonly name: string;
  readonly sheet: string;
  /** Sheet row and column of the first header cell, from 0. */
  readonly top: number;
  readonly left: number;
  readonly headers: readonly string[];
  readonly rowCount: number;
  /** Rows that are hidden or filtered away, where the reader of the workbook tells. */
  readonly hidden?: ReadonlySet<number>;
  readonly cell: (row: number, column: number) => CellValue;
  /** The formula of a cell, without the equals sign; undefined where it holds a plain value. */
  readonly formula: (row: number, column: number) => string | undefined;
}

export interface SheetSnapshot {
  /** By which Excel names the sheet in its events. */
  readonly id?: string;
  readonly name: string;
  /** Whether the whole sheet is hidden, where the reader of the workbook tells. */
  readonly hidden?: boolean;
  readonly tables: readonly TableSnapshot[];
}

/** What the check, the intake and the builder see of a workbook, however it was read. */
export interface Snapshot {
  readonly sheets: readonly SheetSnapshot[];
  /** The lineup that the workbook was built for, where it was built by Gearproof. */
  readonly lineup?: Lineup;
}

export const tablesOf = (snapshot: Snapshot): TableSnapshot[] =>
  snapshot.sheets.flatMap(({ tables }) => tables);
