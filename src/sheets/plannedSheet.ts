import type { Column, Row } from "../records/kind";

/** One sheet of the record workbook, with its one table. */
export interface PlannedSheet {
  readonly sheet: string;
  readonly table: string;
  readonly title: string;
  readonly purpose: string;
  readonly cautions: readonly string[];
  readonly columns: readonly Column[];
  /** Keys and givens of each row; entries are blank. */
  readonly rows: readonly Row[];
}
