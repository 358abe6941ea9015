import { rememberedOf } from "../sheets/kept/remembered";
import { CONCESSION_TABLE } from "../sheets/ours/concessionSheet";
import { instrumentsOf } from "../sheets/ours/instrumentSheet";
import { lineupOfSheets } from "../sheets/ours/lineupOfSheets";
import type { RecordBook } from "../sheets/recordBook";
import { asRecordTable, type RecordTable, recordTables } from "../sheets/recordTable";
import { type Snapshot, type TableSnapshot, tablesOf } from "../sheets/snapshot";
import { mappedTables, NOTHING_MAPPED } from "./ownLayout/mappedTables";

/** A workbook understood as records: its lineup, record tables, instruments and what it remembers. */
export const openBook = (snapshot: Snapshot): RecordBook => {
  const told = lineupOfSheets(snapshot);
  const lineup = snapshot.lineup ?? told;
  const mapped = lineup ? mappedTables(snapshot, lineup) : NOTHING_MAPPED;
  return {
    snapshot,
    told,
    lineup,
    tables: [...recordTables(snapshot, lineup), ...mapped.tables],
    instruments: instrumentsOf(snapshot),
    remembered: rememberedOf(snapshot),
    problems: mapped.problems,
    frame: {},
  };
};

/**
 * A workbook after an edit. Where the edit reached no more than cells of records, the book has the frame
 * of the one before, and only what the edit reached is read again; own layouts are mapped again where the
 * cells of their sheet are other objects than before.
 *
 * @param snapshot the workbook now; its unchanged tables and cells are the very same objects as before
 */
export const reopenBook = (before: RecordBook, snapshot: Snapshot): RecordBook => {
  const { lineup } = before;
  if (!lineup || isFrameEdited(before, snapshot)) return openBook(snapshot);
  const touched = touchedSheets(before.snapshot, snapshot);
  const maps = (snapshot.maps ?? []).filter(({ sheet }) => touched.has(sheet));
  const mapped = maps.length > 0 ? mappedTables(snapshot, lineup, maps) : NOTHING_MAPPED;
  const remapped = new Map(mapped.tables.map((table) => [table.table.name, table]));
  const layouts = before.tables.filter(({ table }) => table.ownLayout && touched.has(table.sheet));
  // Which records an own layout is seen to hold.
  if (remapped.size !== layouts.length || layouts.some(({ table }) => !remapped.has(table.name)))
    return openBook(snapshot);
  const now = new Map(tablesOf(snapshot).map((table) => [table.name, table]));
  return {
    ...before,
    snapshot,
    tables: before.tables.map((table) =>
      table.table.ownLayout
        ? (remapped.get(table.table.name) ?? table)
        : recordTableNow(table, now.get(table.table.name)),
    ),
    remembered: rememberedOf(snapshot),
    problems: [...before.problems.filter(({ sheet }) => !touched.has(sheet)), ...mapped.problems],
  };
};

/** Whether more was edited than cells of records and concessions. */
const isFrameEdited = ({ snapshot: before, tables }: RecordBook, after: Snapshot): boolean => {
  const now = new Map(tablesOf(after).map((table) => [table.name, table]));
  const records = new Set(tables.map(({ table }) => table));
  const known = tablesOf(before);
  return (
    after.maps !== before.maps ||
    now.size !== known.length ||
    known.some(({ name }) => !now.has(name)) ||
    // The lineup and the instruments are read from these.
    known.some(
      (table) => !records.has(table) && !isConcessions(table) && now.get(table.name) !== table,
    ) ||
    after.sheets.some(
      ({ hidden = false }, index) => hidden !== (before.sheets[index]?.hidden ?? false),
    )
  );
};

const isConcessions = ({ name }: TableSnapshot) => name === CONCESSION_TABLE;

/** The sheets whose cells were read again. */
const touchedSheets = (before: Snapshot, after: Snapshot): ReadonlySet<string> => {
  const known = new Map(before.sheets.map(({ name, cells }) => [name, cells]));
  return new Set(
    after.sheets.flatMap(({ name, cells }) => (cells === known.get(name) ? [] : name)),
  );
};

const recordTableNow = (before: RecordTable, now: TableSnapshot | undefined): RecordTable =>
  now === undefined || now === before.table ? before : asRecordTable(before.kind, now);
