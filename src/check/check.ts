import { type MapProblem, mappedTables, NOTHING_MAPPED } from "../intake/ownLayout/mappedTables";
import { verdictOf } from "../records/kind";
import { isLeftOut } from "../records/rowsOf";
import { a1 } from "../sheets/address";
import { CONCESSION_TABLE } from "../sheets/ours/concessionSheet";
import { instrumentsOf } from "../sheets/ours/instrumentSheet";
import { lineupOfSheets } from "../sheets/ours/lineupOfSheets";
import { asRecordTable, recordTables } from "../sheets/recordTable";
import { type Snapshot, type TableSnapshot, tablesOf } from "../sheets/snapshot";
import type { Verdict } from "../standards/judge";
import { settle } from "./applyConcessions";
import type { Context, JudgedTable } from "./context";
import type { Finding } from "./finding";
import { type Edit, judgeTable, rejudge } from "./judgeTable";
import { RULES } from "./rules";
import { type Found, findingsOf, rerunRule, runRule } from "./runRules";

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
  /** What each rule found, from which a recheck goes on. */
  readonly found: readonly Found[];
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
        "has no record tables; build them from a lineup first, or give a workbook that has them (a record table is known by its headers, e.g. Panel or section, Part, Combination, Stage, R 1 min MΩ); a workbook in a layout of its own is read by a map (gearproof map BOOK.xlsx --lineup LINEUP.json -o MAP.json)",
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
      .map((table) => judgeTable(table, lineup))
      .filter(
        ({ kind, judged }) =>
          !isLeftOut(lineup, kind) || judged.some((row) => verdictOf(row) !== "Missing"),
      ),
    instruments: instrumentsOf(snapshot),
    today,
    unmapped: inSheetOrder(mapped.problems.map(unmapped), snapshot),
  };
  return {
    ok: true,
    report: reportOf(
      context,
      RULES.map((rule) => runRule(rule, context)),
    ),
  };
}

/** A line of somebody's own layout that could not be taken for a record, or not whole. */
const unmapped = ({ sheet, row, column, message }: MapProblem): Finding => ({
  rule: "unmapped",
  weight: "query",
  sheet,
  address: a1(row, column),
  message,
});

const inSheetOrder = (findings: readonly Finding[], { sheets }: Snapshot): readonly Finding[] => {
  const at = new Map(sheets.map(({ name }, index) => [name, index]));
  const place = ({ sheet }: Finding) => at.get(sheet) ?? -1;
  return [...findings].sort((one, other) => place(one) - place(other));
};

/** Counts the verdicts of the rows that are judged. */
function countsOf({ tables }: Context): Counts {
  const counts = noCounts();
  for (const { judged, aside } of tables)
    for (const [index, row] of judged.entries())
      if (!aside.has(index)) counts[COUNT_OF[verdictOf(row)]]++;
  return counts;
}

const reportOf = (context: Context, found: readonly Found[]): Report => ({
  counts: countsOf(context),
  findings: settle([...found.flatMap(findingsOf), ...(context.unmapped ?? [])], context),
  context,
  found,
});

const isConcessions = ({ name }: TableSnapshot) => name === CONCESSION_TABLE;

/** Whether a sheet was hidden or shown. */
const isShownOtherwise = (before: Snapshot, after: Snapshot) =>
  after.sheets.some(({ hidden = false }, at) => hidden !== (before.sheets[at]?.hidden ?? false));

/**
 * The check after an edit: only what the edit reaches is computed and looked for again. Blocks in
 * somebody's own layout are mapped again where the cells of their sheet are other objects than before.
 *
 * @param snapshot the workbook now; its unchanged tables and cells are the very same objects as before
 */
export function recheck(before: Report, snapshot: Snapshot): ReturnType<typeof check> {
  const { context } = before;
  const { lineup } = context;
  const now = new Map(tablesOf(snapshot).map((table) => [table.name, table]));
  const own = context.tables.filter(({ table }) => !table.seen);
  const records = new Set(own.map(({ table }) => table));
  const others = tablesOf(context.snapshot).filter((table) => !records.has(table));
  const touched = touchedSheets(context.snapshot, snapshot);
  const maps = (snapshot.maps ?? []).filter(({ sheet }) => touched.has(sheet));
  const mapped = maps.length > 0 ? mappedTables(snapshot, lineup, maps) : NOTHING_MAPPED;
  const remapped = new Map(mapped.tables.map((table) => [table.table.name, table]));
  const seen = context.tables.filter(({ table }) => table.seen && touched.has(table.sheet));
  if (
    // How own layouts are read, or which records they are seen to hold.
    snapshot.maps !== context.snapshot.maps ||
    remapped.size !== seen.length ||
    seen.some(({ table }) => !remapped.has(table.name)) ||
    // The lineup and the instruments are read from these.
    others.some(
      (table) => now.get(table.name) !== table && !(isConcessions(table) && now.has(table.name)),
    ) ||
    // A table that came or went.
    now.size !== records.size + others.length ||
    [...records].some(({ name }) => !now.has(name)) ||
    isShownOtherwise(context.snapshot, snapshot)
  )
    return check(snapshot, context.today);
  const rejudged = context.tables.map((one): { table: JudgedTable; edit: Edit } => {
    const { name, seen } = one.table;
    const fresh = seen ? remapped.get(name) : recordTableNow(one, now.get(name));
    return fresh === undefined ? { table: one, edit: "nothing" } : rejudge(one, fresh, lineup);
  });
  const untouched = (context.unmapped ?? []).filter(({ sheet }) => !touched.has(sheet));
  const after = {
    ...context,
    snapshot,
    tables: rejudged.map(({ table }) => table),
    unmapped: inSheetOrder([...untouched, ...mapped.problems.map(unmapped)], snapshot),
  };
  const edits = rejudged.map(({ edit }) => edit);
  return {
    ok: true,
    report: reportOf(
      after,
      before.found.map((found) => rerunRule(found, after, edits)),
    ),
  };
}

/** The sheets whose cells were read again. */
const touchedSheets = (before: Snapshot, after: Snapshot): ReadonlySet<string> => {
  const known = new Map(before.sheets.map(({ name, cells }) => [name, cells]));
  return new Set(
    after.sheets.flatMap(({ name, cells }) => (cells === known.get(name) ? [] : name)),
  );
};

const recordTableNow = ({ kind, table }: JudgedTable, now: TableSnapshot | undefined) =>
  now === undefined || now === table ? undefined : asRecordTable(kind, now);
