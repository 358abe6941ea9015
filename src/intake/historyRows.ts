import { keyIds, rowKey } from "../records/kind";
import type { HistoryRow } from "../sheets/historySheet";
import type { Kept } from "./placement";
import type { RecordRows } from "./recordRows";

/**
 * The entries of the history for readings that others have taken the place of.
 *
 * @param on the day of it, as a serial day number
 */
export const historyRows = (kept: readonly Kept<RecordRows>[], on: number): HistoryRow[] =>
  kept.map(({ table: { kind, rows }, row, column, value, when, source }) => ({
    sheet: kind.sheet,
    row: rowKey(rows[row] ?? {}, keyIds(kind)),
    column: kind.columns.find(({ id }) => id === column)?.header ?? column,
    value,
    date: when ?? null,
    source,
    replacedOn: on,
  }));
