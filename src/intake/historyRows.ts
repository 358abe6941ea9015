import { keyIds, rowKey } from "../records/kind";
import type { HistoryRow } from "../sheets/ours/historySheet";
import type { Kept } from "./place/placement";
import type { RecordRows } from "./rows/recordRows";

/** How the history names a cell: its sheet, its record and its column. */
export const historyPlace = (
  { kind, rows }: RecordRows,
  row: number,
  column: string,
): Pick<HistoryRow, "sheet" | "row" | "column"> => ({
  sheet: kind.sheet,
  row: rowKey(rows[row] ?? {}, keyIds(kind)),
  column: kind.columns.find(({ id }) => id === column)?.header ?? column,
});

/**
 * The entries of the history for readings that others have taken the place of.
 *
 * @param on the day of it, as a serial day number
 */
export const historyRows = (kept: readonly Kept<RecordRows>[], on: number): HistoryRow[] =>
  kept.map(({ table, row, column, value, when, source }) => ({
    ...historyPlace(table, row, column),
    value,
    date: when ?? null,
    source,
    replacedOn: on,
  }));
