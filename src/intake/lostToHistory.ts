import type { CellValue } from "../records/kind";
import {
  HISTORY_TABLE,
  type HistoryRow,
  historyWrites,
  newHistory,
} from "../sheets/ours/historySheet";
import type { Changes } from "../sheets/plan/changes";
import { type Snapshot, tablesOf } from "../sheets/snapshot";

/** What puts into the history what cells held that were written over while somebody typed into them. */
export const lostToHistory = (
  snapshot: Snapshot,
  lost: readonly { readonly sheet: string; readonly address: string; readonly value: CellValue }[],
  today: number,
): Changes => {
  const table = tablesOf(snapshot).find(({ name }) => name === HISTORY_TABLE);
  const entries = lost.map(({ sheet, address, value }): HistoryRow => {
    const source = "Typed while readings were being written";
    return { sheet, row: address, column: "", value, date: null, source, replacedOn: today };
  });
  const written = historyWrites(entries, table);
  return table ? { change: [{ table, ...written }] } : { create: [newHistory(written)] };
};
