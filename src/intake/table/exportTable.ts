import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import type { DecimalEvidence } from "../../quantities/reading/decimalMark";
import type { ExportRow } from "../columns/unpivot";
import type { Sense } from "../words/languages/language";
import type { DateOrder } from "../words/readDate";
import type { ExportColumn } from "../words/titles";
import type { Shape } from "./exportOptions";
import type { Inspection } from "./inspection";
import type { Written } from "./written";

/** One test of an export: a table with its titles and the facts above it. */
export interface ExportBlock {
  readonly title?: string;
  /** Line of its titles, from 1. */
  readonly line: number;
  /** What stands above the table, as key and value. */
  readonly header: Readonly<Record<string, string>>;
  /** One reading a row: the columns of a wide table are those that it was made into. */
  readonly columns: readonly ExportColumn[];
  readonly shape: Shape;
  /** Parts of a panel that its headings and the file's name speak of, where lines name none. */
  readonly about?: ReadonlySet<Sense>;
  /** The record kind that it is of, where all of it speaks for one. */
  readonly kind?: string;
  /** Why nothing of it is taken: what it is of is not known. */
  readonly open?: Said<Told>;
  /** What holds for every line of it, where the workbook has told what its facts mean. */
  readonly facts?: readonly Written[];
}

/** An export, its tables found and their columns recognised, nothing placed yet. */
export interface ExportTable {
  readonly name: string;
  readonly delimiter: string;
  readonly decimal: DecimalEvidence;
  readonly dates: DateOrder | undefined;
  /** Every phase, pole and combination as written, by which the letters of phases are known. */
  readonly positions: ReadonlySet<string>;
  /** The facts above the first table. */
  readonly header: Readonly<Record<string, string>>;
  /** Every column of every table, those that are alike once. */
  readonly columns: readonly ExportColumn[];
  readonly blocks: readonly ExportBlock[];
  /** The rows of all tables, one after the other. */
  readonly rows: readonly ExportRow[];
  /** The same, read from the text anew, so that a long file is never held in parts. */
  readonly each: () => Iterable<EachRow>;
  readonly inspection: Inspection;
}

/** A row of an export, and the table that it is of. */
export interface EachRow {
  readonly block: ExportBlock;
  readonly row: ExportRow;
  /** The line of the same table above that says the same, save a running number and the time of day; the first of them. */
  readonly like?: number;
}
