import { KINDS } from "../../records/kinds";
import { headedAs } from "../recordTable";
import { type Snapshot, tablesOf } from "../snapshot";
import type { Plan } from "./plan";
import { belongs } from "./reconcile";

/** A plan for a workbook that exists: a table of it keeps the headers that it was built with, whatever the phases are called now. */
export const planOnto = (plan: Plan, snapshot: Snapshot | undefined): Plan => {
  if (!snapshot) return plan;
  const tables = tablesOf(snapshot);
  const lineups = [plan.lineup, ...(snapshot.lineup ? [snapshot.lineup] : [])];
  const sheets = plan.sheets.map((planned) => {
    const kind = KINDS.find(({ table }) => table === planned.table);
    const table = kind && tables.find((one) => belongs(planned, one));
    return table ? { ...planned, columns: headedAs(kind, table, lineups).columns } : planned;
  });
  return { ...plan, sheets };
};
