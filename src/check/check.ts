import type { Verdict } from "../criteria/judge";
import { type MapProblem, mappedTables, NOTHING_MAPPED } from "../intake/mappedTables";
import type { Lineup } from "../lineup/lineup";
import { evaluate } from "../records/evaluate";
import { isBlank, keyIds, rowKey, verdictOf } from "../records/kind";
import { isLeftOut, rowsOf } from "../records/rowsOf";
import { a1 } from "../sheets/address";
import { instrumentsOf } from "../sheets/instrumentSheet";
import { lineupOfSheets } from "../sheets/lineupOfSheets";
import { asRecordTable, type RecordTable, recordTables } from "../sheets/recordTable";
import { type Snapshot, tablesOf } from "../sheets/snapshot";
import type { Context, JudgedTable } from "./context";
import type { Finding } from "./finding";
import { RULES } from "./rules";

/** How many rows came to each verdict. */
export interface Counts {
  readonly pass: number;
  readonly fail: number;
  readonly missing: number;
  readonly inconclusive: number;
  readonly notRequired: number;
}

/** What the check of one workbook comes to. */
export interface Report {
  readonly counts: Counts;
  readonly findings: readonly Finding[];
  /** The tables as they were judged, for the report that draws them. */
  readonly context: Context;
}

export const COUNT_OF: Readonly<Record<Verdict, keyof Counts>> = {
  Pass: "pass",
  Fail: "fail",
  Missing: "missing",
  Inconclusive: "inconclusive",
  "Not required": "notRequired",
};

export const noCounts = (): Record<keyof Counts, number> => ({
  pass: 0,
  fail: 0,
  missing: 0,
  inconclusive: 0,
  notRequired: 0,
});

/** A result is always a word, so where every one is a formula with nothing beside it, nothing was calculated. */
function isCalculated({ table, at, rows }: RecordTable): boolean {
  const column = at.get("result");
  return (
    column === undefined ||
    rows.length === 0 ||
    rows.some((row, index) => !isBlank(row.result) || table.formula(index, column) === undefined)
  );
}

/** Why a workbook cannot be checked at all, and what would be right. */
export interface Uncheckable {
  readonly ok: false;
  readonly reason: string;
}

/**
 * Computes every record of a workbook again from its entries and lists what is missing, out, does not
 * add up or is out of order. The snapshot stays as it is.
 *
 * @param today the day of the check, as a serial day number
 */
export function check(
  snapshot: Snapshot,
  today: number,
): { readonly ok: true; readonly report: Report } | Uncheckable {
  const told = lineupOfSheets(snapshot);
  const lineup = snapshot.lineup ?? told;
  const mapped = lineup ? mappedTables(snapshot, lineup) : NOTHING_MAPPED;
  const tables = [...recordTables(snapshot), ...mapped.tables];
  if (tables.length === 0 && mapped.problems.length === 0)
    return {
      ok: false,
      reason:
        "has no record tables; build them from a lineup first, or give a workbook that has them (a record table is known by its headers, e.g. Panel or section, Part, Combination, Stage, R 1 min MΩ)",
    };
  if (!lineup)
    return {
      ok: false,
      reason:
        "does not tell its lineup (cover and panels are missing or changed), so that ratings and criteria are unknown; build the lineup onto it again (gearproof lineup LINEUP.json -o BOOK.xlsx)",
    };
  const context: Context = {
    snapshot,
    lineup,
    told,
    tables: tables
      .map((table) => judge(table, lineup))
      .filter(
        ({ kind, judged }) =>
          !isLeftOut(lineup, kind) || judged.some((row) => verdictOf(row) !== "Missing"),
      ),
    instruments: instrumentsOf(snapshot),
    today,
    unmapped: mapped.problems.map(unmapped),
  };
  return { ok: true, report: reportOf(context) };
}

/** A line of somebody's own layout that could not be taken for a record, or not whole. */
const unmapped = ({ sheet, row, column, message }: MapProblem): Finding => ({
  rule: "unmapped",
  weight: "query",
  sheet,
  address: a1(row, column),
  message,
});

function judge(table: RecordTable, lineup: Lineup, known?: JudgedTable["given"]): JudgedTable {
  const ids = keyIds(table.kind);
  return {
    ...table,
    judged: evaluate(table.kind, table.rows, lineup),
    keys: table.rows.map((row) => rowKey(row, ids)),
    given: known ?? new Map(rowsOf(table.kind, lineup).map((row) => [rowKey(row, ids), row])),
    calculated: isCalculated(table),
  };
}

function reportOf(context: Context): Report {
  const counts = noCounts();
  for (const { judged } of context.tables)
    for (const row of judged) counts[COUNT_OF[verdictOf(row)]]++;
  return {
    counts,
    findings: [...RULES.flatMap(({ find }) => find(context)), ...(context.unmapped ?? [])],
    context,
  };
}

/**
 * The check after an edit: tables that stand as they stood are not computed again.
 *
 * @param snapshot the workbook now; its unchanged tables are the very same objects as before
 */
export function recheck(before: Report, snapshot: Snapshot): ReturnType<typeof check> {
  const { context } = before;
  const now = new Map(tablesOf(snapshot).map((table) => [table.name, table]));
  const records = new Set(context.tables.map(({ table }) => table));
  const others = tablesOf(context.snapshot).filter((table) => !records.has(table));
  // The lineup and the instruments are read from these.
  if (snapshot.maps?.length || others.some((table) => now.get(table.name) !== table))
    return check(snapshot, context.today);
  const tables = context.tables.map((one) => {
    const fresh = now.get(one.table.name);
    return fresh === undefined || fresh === one.table
      ? one
      : judge(asRecordTable(one.kind, fresh), context.lineup, one.given);
  });
  return { ok: true, report: reportOf({ ...context, snapshot, tables }) };
}
