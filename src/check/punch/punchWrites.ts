import type { CellValue } from "../../records/kind";
import { type CellWrite, isSameStored } from "../../sheets/cells/cell";
import { PUNCH_COLUMNS, PUNCH_STATES, punchSheet, punchTable } from "../../sheets/ours/punchSheet";
import { writesOf } from "../../sheets/plan/appended";
import type { Changes } from "../../sheets/plan/changes";
import { papersOf } from "../../sheets/plan/plannedSheet";
import type { TableSnapshot } from "../../sheets/snapshot";
import type { Report } from "../check";
import { type PunchItem, punchList } from "./punchList";

/** What brings a workbook's punch list up to date; further columns of the user's move with their rows. */
export function punchChanges(report: Report): Changes {
  const { snapshot, lineup } = report.context;
  const items = punchList(report);
  const table = punchTable(snapshot);
  if (table) return { change: [{ table, ...rewritten(table, items) }] };
  const planned = punchSheet(
    items.map(({ cells }) => cells),
    papersOf(lineup),
  );
  return { create: [{ planned, writes: writesOf(planned) }] };
}

/** How many items are open, by the words in which they stand. */
export const openItems = (report: Report): number =>
  punchList(report).filter(
    ({ cells }) => cells.state !== PUNCH_STATES.closed && cells.state !== PUNCH_STATES.accepted,
  ).length;

/** The cells in which a table differs from its items, one a row. */
function rewritten(table: TableSnapshot, items: readonly PunchItem[]) {
  const ids = new Map(PUNCH_COLUMNS.map(({ header, id }) => [header, id]));
  const inRows = hasFormulas(table, ids) ? inPlace(table, items) : items;
  const height = Math.max(table.rowCount, inRows.length);
  const writes = Array.from({ length: height }, (_, row) =>
    table.headers.flatMap((header, column): CellWrite[] => {
      const id = ids.get(header);
      const item = inRows[row];
      const value = id ? (item?.cells[id] ?? null) : own(table, item, column);
      const before = row < table.rowCount ? table.cell(row, column) : null;
      return isSameStored(before, value) ? [] : [{ row, column, value }];
    }),
  ).flat();
  return { added: Math.max(0, inRows.length - table.rowCount), writes };
}

/** What somebody's own column holds in an item's row. */
const own = (table: TableSnapshot, item: PunchItem | undefined, column: number): CellValue =>
  item?.from === undefined ? null : table.cell(item.from, column);

/** A formula of the user's belongs to its row, so that rows stay in their places. */
const hasFormulas = (table: TableSnapshot, ids: ReadonlyMap<string, string>): boolean =>
  table.headers.some(
    (header, column) =>
      !ids.has(header) &&
      Array.from({ length: table.rowCount }, (_, row) => table.formula(row, column)).some(
        (formula) => formula !== undefined,
      ),
  );

/** Known items where they are, new ones below. */
function inPlace(table: TableSnapshot, items: readonly PunchItem[]): (PunchItem | undefined)[] {
  const rows: (PunchItem | undefined)[] = Array.from({ length: table.rowCount });
  const fresh: PunchItem[] = [];
  for (const item of items)
    if (item.from === undefined) fresh.push(item);
    else rows[item.from] = item;
  let used = rows.length;
  while (used > 0 && rows[used - 1] === undefined) used -= 1;
  return [...rows.slice(0, used), ...fresh];
}
