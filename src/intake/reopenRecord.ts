import type { Told } from "../messages/told";
import { answer, type Result, refuse } from "../quantities/result";
import { evaluate } from "../records/evaluate";
import { isBlank, keyIds, rowKey } from "../records/kind";
import { readingWords } from "../records/readingWords";
import type { Work } from "../records/repairs";
import {
  HISTORY_TABLE,
  type HistoryRow,
  historyWrites,
  newHistory,
} from "../sheets/ours/historySheet";
import { REPAIR_COLUMNS, repairSheet, repairTable } from "../sheets/ours/repairSheet";
import { appended } from "../sheets/plan/appended";
import type { Changes } from "../sheets/plan/changes";
import type { RecordBook } from "../sheets/recordBook";
import type { RecordTable } from "../sheets/recordTable";
import { tablesOf } from "../sheets/snapshot";
import { historyPlace } from "./historyRows";
import type { PlacedCell } from "./place/placement";

/** What is said of a repair; the day as a serial day number. */
export interface RepairSaid {
  readonly cause: string;
  readonly work: Work;
  readonly done: string;
  readonly by: string;
  readonly day: number;
  /** The panel that was worked on, where the record is of a bus section. */
  readonly panel?: string;
}

/** Reopening a record for its retest: nothing is written yet. */
export interface Reopened {
  /** Written first: the failed entries into the history, the repair onto its sheet. */
  readonly before: Changes;
  /** Written after: the record's entries, blank again. */
  readonly cells: readonly PlacedCell<RecordTable>[];
}

/** Where an entry says that it comes from, once it stands in the history. */
const SOURCE = "Before the repair";

/**
 * Reopens a record that was repaired: what stands on it goes to the history, the repair onto the sheet
 * Repairs, and the record is blank for the retest.
 *
 * @param row within the table's body, from 0
 * @param today the day on which it is reopened, as a serial day number
 * @returns a refusal where nothing is recorded in the row, or it is of an own layout
 */
export function reopenRecord(
  { snapshot, lineup }: RecordBook,
  table: RecordTable,
  row: number,
  { cause, work, done, by, day, panel }: RepairSaid,
  today: number,
): Result<Reopened, Told> {
  const stored = table.rows[row] ?? {};
  const key = rowKey(stored, keyIds(table.kind));
  if (table.table.ownLayout || !lineup)
    return refuse("none", ({ intake }) => intake.reopen.ownLayout(key));
  const entries = table.kind.columns.filter(
    ({ id, role }) =>
      (role === "entry" || role === "note") && table.at.has(id) && !isBlank(stored[id]),
  );
  if (!entries.some(({ role }) => role === "entry"))
    return refuse("none", ({ intake }) => intake.reopen.nothing(key));
  const judged = evaluate(table.kind, table.rows, lineup)[row] ?? {};
  const kept = entries
    .filter(({ id }) => id !== "origin")
    .map(({ id }) => historyRow(table, row, id, today));
  const repair = {
    sheet: table.table.sheet,
    row: key,
    found: readingWords(table.kind, { ...stored, result: judged.result ?? null }),
    tested: stored.date ?? null,
    cause,
    work,
    panel: panel ?? null,
    done,
    by,
    date: day,
  };
  const history = tablesOf(snapshot).find(({ name }) => name === HISTORY_TABLE);
  const written = historyWrites(kept, history);
  const repairs = repairTable(snapshot);
  const added = appended(REPAIR_COLUMNS, [repair], repairs);
  const create = [
    ...(history ? [] : [newHistory(written)]),
    ...(repairs ? [] : [{ planned: { ...repairSheet(), rows: [repair] }, writes: added.writes }]),
  ];
  const change = [
    ...(history ? [{ table: history, ...written }] : []),
    ...(repairs ? [{ table: repairs, ...added }] : []),
  ];
  const cells = entries.map(({ id }) => ({
    ...{ table, row, column: id, value: null },
    old: stored[id] ?? null,
    source: { file: SOURCE, line: 0 },
  }));
  return answer({ before: { create, change }, cells });
}

const historyRow = (table: RecordTable, row: number, id: string, today: number): HistoryRow => {
  const { date, origin, [id]: value = null } = table.rows[row] ?? {};
  return {
    ...historyPlace(table, row, id),
    value,
    date: typeof date === "number" ? date : null,
    source: isBlank(origin) ? SOURCE : String(origin),
    replacedOn: today,
  };
};
