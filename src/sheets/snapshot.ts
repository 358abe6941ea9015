import type { Lineup } from "../lineup/lineup";
import type { CellValue } from "../records/kind";
import type { BuiltFormulas } from "./cells/builtFormulas";
import type { Remembered } from "./kept/remembered";

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
  /** Columns that are hidden, where the way in tells it of tables; else the cells of the sheet tell it. */
  readonly hiddenColumns?: ReadonlySet<number>;
  readonly cell: (row: number, column: number) => CellValue;
  /** The formula of a cell, without the equals sign; undefined where it holds a plain value. */
  readonly formula: (row: number, column: number) => string | undefined;
  /** Set for a table that is only seen as one: a block of a sheet in somebody's own layout. */
  readonly ownLayout?: OwnLayout;
}

/** A limit, corrected value, spread or result that a layout states itself: in the unit of the kind's column, a share in per cent, at its own cell. */
export interface Stated {
  readonly value: number | "Pass" | "Fail";
  readonly row: number;
  readonly column: number;
  readonly formula?: string;
}

/** Cells of a sheet, and what stood in them, by row. */
export interface Told {
  readonly area: {
    readonly top: number;
    readonly left: number;
    readonly bottom: number;
    readonly right: number;
  };
  readonly values: readonly (readonly CellValue[])[];
}

/** Where a table that is only seen as one keeps its cells, and how a value is written there. */
export interface OwnLayout {
  /** Sheet row and column, from 0, by which a cell of the table's body is named. */
  readonly place: (row: number, column: number) => { row: number; column: number } | undefined;
  /** The layout's own cell of a value and what it holds as written; undefined where the layout has none. */
  readonly holds: (
    row: number,
    column: number,
  ) => { row: number; column: number; value: CellValue } | undefined;
  /** What the layout states of a row, by id of the kind's column; only compared, never written. */
  readonly stated?: (row: number) => ReadonlyMap<string, Stated>;
  /** The layout's own formulas in the row of a value's cell that take that cell. */
  readonly takenBy?: (
    row: number,
    column: number,
  ) => readonly { readonly row: number; readonly column: number; readonly formula: string }[];
  /** The cells that tell what a row's cells are: the block's titles, and the names of the record; and what stood in them. */
  readonly toldBy?: (row: number) => readonly Told[];
  /** The value as the layout's own unit has it. */
  readonly written: (row: number, column: number, value: CellValue) => CellValue;
}

/** Why a value is not seen on its sheet, or seen as something else: the colour of what is behind it, or its number format. */
export type Unseen = "colour" | "format";

/** The cells of a sheet as far as it is used, rows and columns from 0. */
export interface SheetCells {
  readonly rowCount: number;
  readonly columnCount: number;
  readonly cell: (row: number, column: number) => CellValue;
  readonly formula: (row: number, column: number) => string | undefined;
  /** Rows that are hidden or filtered away, where the way in tells. */
  readonly hidden?: ReadonlySet<number>;
  /** Whether a column is hidden, or narrower than a digit, where the way in tells. */
  readonly isColumnHidden?: (column: number) => boolean;
  /** Whether a value is not seen as it is, where the way in tells. */
  readonly unseen?: (row: number, column: number) => Unseen | undefined;
  /** Cells that are joined to one, where the way in reads them; the first holds what is written. */
  readonly merges?: readonly {
    readonly top: number;
    readonly left: number;
    readonly bottom: number;
    readonly right: number;
  }[];
  /** The note on a cell, where the way in reads them. */
  readonly note?: (row: number, column: number) => string | undefined;
  /** The rows in which a note is written, where that is known. */
  readonly notedRows?: ReadonlySet<number>;
}

export interface SheetSnapshot {
  /** By which Excel names the sheet in its events. */
  readonly id?: string;
  readonly name: string;
  /** Whether the whole sheet is hidden, where the reader of the workbook tells. */
  readonly hidden?: boolean;
  readonly tables: readonly TableSnapshot[];
  /** Where the way in reads them: what stands outside tables too. */
  readonly cells?: SheetCells;
  /** Areas of result columns that were put beside its tables. */
  readonly beside?: readonly Told["area"][];
}

/** Who saved a workbook last. */
export interface SavedBy {
  readonly name: string;
  /** As 2026-11-25, where it is told. */
  readonly day?: string;
}

/** What the check, the intake and the builder see of a workbook, however it was read. */
export interface Snapshot extends Partial<Remembered> {
  readonly sheets: readonly SheetSnapshot[];
  /** The lineup that the workbook was built for, where it was built by Gearproof. */
  readonly lineup?: Lineup;
  /** The formulas that its last build wrote, where the workbook remembers them. */
  readonly formulas?: BuiltFormulas;
  /** Whether the workbook is open in a spreadsheet that calculates only when it is told to. */
  readonly isManual?: boolean;
  /** Who saved it last, where the way in tells. */
  readonly savedBy?: SavedBy;
}

export const tablesOf = (snapshot: Snapshot): TableSnapshot[] =>
  snapshot.sheets.flatMap(({ tables }) => tables);
