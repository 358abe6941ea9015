import type { PlannedSheet } from "../sheets/plan/plannedSheet";

/** Sheet row of the table header, from 0: title, purpose and cautions stand above it. */
export const HEADER_ROW = 3;
/** Its height, in points. */
export const HEADER_HEIGHT = 32;
/** Columns that the title's lines are merged over. */
export const TITLE_WIDTH = 12;
/** Rows of the table of instruments that an instrument's Id may stand in. */
export const INSTRUMENT_ROWS = 200;

/** Row of the table's last cell, from 0; a table has at least one row. */
export const lastRow = (rows: number): number => HEADER_ROW + Math.max(rows, 1);

/** Text of the cell that the cautions stand in. */
export const cautionText = ({ cautions }: PlannedSheet): string =>
  cautions.map((line) => `• ${line}`).join("\n");
