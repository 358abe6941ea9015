import type { CellStyle, ConditionalRule } from "../../look/cellStyle";
import type { Paper } from "../../look/page";
import type { Validation } from "../../look/validation";
import type { CellValue } from "../../records/kind";
import type { Area } from "../../sheets/cells/area";
import type { DraftNote } from "./notesXml";

export interface DraftCell {
  readonly value: CellValue;
  readonly formula?: string;
  readonly style?: CellStyle;
}

export interface DraftTable {
  readonly name: string;
  readonly area: Area;
  readonly headers: readonly string[];
  /** By header, what a table gives to rows that are added in a spreadsheet. */
  readonly formulas?: ReadonlyMap<string, string>;
  readonly totals?: boolean;
}

export interface DraftValidation {
  readonly validation: Validation;
  readonly range: string;
  readonly title: string;
  /** What is shown when a cell is chosen. */
  readonly help?: string;
}

/** How a sheet goes on paper, in landscape. */
export interface DraftPage {
  readonly paper: Paper;
  readonly across: number;
  readonly footer: string;
  /** The row and the columns from the left that stand on every page, from 0 and as a count. */
  readonly titleRow: number;
  readonly titleColumns: number;
}

/** A sheet to be written; rows and columns count from 0. */
export interface SheetDraft {
  readonly name: string;
  /** Rows and their cells, each in rising order; of a long sheet made one by one as they are written. */
  readonly rows: Iterable<readonly [row: number, cells: ReadonlyMap<number, DraftCell>]>;
  /** Widths of the columns, in characters. */
  readonly widths: readonly number[];
  /** Heights of rows, in points. */
  readonly heights: ReadonlyMap<number, number>;
  readonly merges: readonly Area[];
  readonly tables: readonly DraftTable[];
  readonly validations: readonly DraftValidation[];
  readonly rules: readonly ConditionalRule[];
  /** Rows and columns that stay in sight. */
  readonly frozen?: { readonly rows: number; readonly columns: number };
  readonly gridLines: boolean;
  readonly page?: DraftPage;
  readonly notes?: readonly DraftNote[];
}
