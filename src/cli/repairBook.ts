import { openBook } from "../intake/openBook";
import { type RepairSaid, reopenRecord } from "../intake/reopenRecord";
import { withResults } from "../intake/takeIn";
import { commandLineFor } from "../messages/commandLine";
import { daySerial, serialDay } from "../quantities/dates";
import { today } from "../quantities/today";
import { keyIds, rowKey } from "../records/kind";
import { readArea } from "../sheets/cells/area";
import type { RecordTable } from "../sheets/recordTable";
import { writeCells } from "../xlsx/file";
import { named, UsageError } from "./files/files";
import { saveBook } from "./files/saveBook";
import { openBookAs } from "./openBookAs";

export interface RepairOptions extends Omit<RepairSaid, "day"> {
  /** As 2026-11-25; today where not given. */
  readonly date?: string;
}

/**
 * Reopens the record of a cell after its repair and writes the workbook anew; gives in words what came of it.
 *
 * @param cell as a finding gives it, `Contacts!H12`
 * @throws {UsageError} where the cell is of no record, nothing is recorded there, or the day has not come
 */
export async function repairBook(
  book: string,
  cell: string,
  out: string,
  { date, ...said }: RepairOptions,
): Promise<string> {
  const now = today();
  const day = date === undefined ? now : dayIn(date);
  if (day === undefined || day > now)
    throw new UsageError(({ repair }) => repair.noDay(date ?? ""));
  const { bytes, snapshot } = await openBookAs(book, {});
  const records = openBook(snapshot);
  const place = placeOf(records.tables, cell);
  if (!place) throw new UsageError(({ repair }) => repair.noCell(cell));
  const { table, row } = place;
  const reopened = reopenRecord(records, table, row, { ...said, day }, now);
  if (!reopened.ok)
    throw new UsageError(({ repair, told }) => repair.refused(cell, reopened.say(told)));
  const { before, cells } = reopened.value;
  const changes = [...withResults(records, cells), ...(before.change ?? [])];
  saveBook(out, await named(book, () => writeCells(bytes, changes, before)));
  const key = rowKey(table.rows[row] ?? {}, keyIds(table.kind));
  return commandLineFor("en").repair.reopened(key, cells.length, said.work);
}

/** A day as it is written, and no other: 2026-02-30 is none. */
const dayIn = (written: string): number | undefined => {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(written)) return undefined;
  const serial = daySerial(written);
  return Number.isFinite(serial) && serialDay(serial) === written ? serial : undefined;
};

/** The record that a cell is of. */
function placeOf(tables: readonly RecordTable[], cell: string) {
  const [, sheet = "", address = ""] = /^(.+)!([^!]+)$/.exec(cell.trim()) ?? [];
  const area = readArea(address);
  if (!area) return undefined;
  const name = sheet.replace(/^'(.*)'$/, "$1").toLowerCase();
  return tables.flatMap((table) => {
    const { top, left, headers, rowCount, sheet: own, ownLayout } = table.table;
    const row = area.top - top - 1;
    const isInside =
      row >= 0 && row < rowCount && area.left >= left && area.left < left + headers.length;
    return own.toLowerCase() === name && !ownLayout && isInside ? [{ table, row }] : [];
  })[0];
}
