import type { Verdict } from "../criteria/judge";
import { evaluate } from "../records/evaluate";
import { isBlank, keyIds, rowKey, verdictOf } from "../records/kind";
import { isLeftOut, rowsOf } from "../records/rowsOf";
import { instrumentsOf } from "../sheets/instrumentSheet";
import { lineupOfSheets } from "../sheets/lineupOfSheets";
import { type RecordTable, recordTables } from "../sheets/recordTable";
import type { Snapshot } from "../sheets/snapshot";
import type { Context } from "./context";
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
  const tables = recordTables(snapshot);
  if (tables.length === 0)
    return {
      ok: false,
      reason:
        "has no record tables; build them from a lineup first, or give a workbook that has them (a record table is known by its headers, e.g. Panel or section, Part, Combination, Stage, R 1 min MΩ)",
    };
  const told = lineupOfSheets(snapshot);
  const lineup = snapshot.lineup ?? told;
  if (!lineup)
    return {
      ok: false,
      reason:
        "does not tell its lineup (cover and panels are missing or changed), so that ratings and criteria are unknown; build the lineup onto it again (gearproof lineup LINEUP.json -o BOOK.xlsx)",
    };
  const context: Context = {
    lineup,
    told,
    tables: tables.flatMap((table) => {
      const ids = keyIds(table.kind);
      const judged = evaluate(table.kind, table.rows, lineup);
      if (isLeftOut(lineup, table.kind) && judged.every((row) => verdictOf(row) === "Missing"))
        return [];
      return {
        ...table,
        judged,
        keys: table.rows.map((row) => rowKey(row, ids)),
        given: new Map(rowsOf(table.kind, lineup).map((row) => [rowKey(row, ids), row])),
        calculated: isCalculated(table),
      };
    }),
    instruments: instrumentsOf(snapshot),
    today,
  };
  const counts = noCounts();
  for (const { judged } of context.tables)
    for (const row of judged) counts[COUNT_OF[verdictOf(row)]]++;
  return {
    ok: true,
    report: { counts, findings: RULES.flatMap(({ find }) => find(context)), context },
  };
}
