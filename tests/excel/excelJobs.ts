import type { Finding, Weight } from "../../src/check/findings/finding";
import {
  applyFills,
  applyPlan,
  clearMarks,
  type FillOptions,
  markFindings,
  readExcel,
} from "../../src/excel/workbook";
import { planFor } from "../../src/sheets/plan/plan";
import type { Snapshot } from "../../src/sheets/snapshot";
import { type Box, bodyRows, tableNamed } from "../../src/standin/book";
import type { StandInHost } from "../../src/standin/host";
import { check } from "../support/checkBook";
import { filledPlan } from "../support/fill";
import { longLineup } from "../support/lineups";
import { bigExcel, inExcel, newExcel, placed } from "./excelSupport";

/** What a piece of work cost between the add-in and Excel. */
export interface Cost {
  readonly batches: number;
  /** Bytes sent and received, and of the greatest single request or answer. */
  readonly up: number;
  readonly down: number;
  readonly greatest: number;
}

/** What has been sent and received since the stand-in was reset. */
export function costOf({ batches }: StandInHost): Cost {
  const sum = (of: "up" | "down") => batches.reduce((total, batch) => total + batch[of], 0);
  return {
    batches: batches.length,
    up: sum("up"),
    down: sum("down"),
    greatest: Math.max(0, ...batches.flatMap(({ up, down }) => [up, down])),
  };
}

/** Runs a piece of work and counts what it cost. */
export async function cost<T>(
  host: StandInHost,
  work: (context: Excel.RequestContext) => Promise<T>,
): Promise<{ cost: Cost; value: T }> {
  host.reset();
  const value = await inExcel(host, work);
  return { value, cost: costOf(host) };
}

/** Builds a lineup of so many panels into a new workbook. */
export async function buildJob(panels: number) {
  const host = newExcel();
  const plan = planFor(longLineup(panels));
  const first = await cost(host, (context) => applyPlan(context, plan));
  const again = await cost(host, (context) => applyPlan(context, plan));
  return { first, again };
}

/** A filled-in workbook of so many record rows, made without the adapter. */
export const recordRows = (rows: number): StandInHost =>
  bigExcel(filledPlan(longLineup(Math.round(rows / 24)), 1));

/**
 * A workbook whose insulation table has so many rows: those of a small lineup over and over, each time
 * under other designations.
 */
export function repeatedRows(rows: number): StandInHost {
  const host = bigExcel(filledPlan(longLineup(10), 1));
  const { sheet, table } = tableNamed(host.book, "GearInsulation");
  const { first, last } = bodyRows(table);
  const pattern = sheet.cells.slice(first, last + 1);
  for (let row = last + 1; row < first + rows; row++)
    sheet.cells[row] = (pattern[(row - first) % pattern.length] ?? []).map(
      (box: Box | undefined, column) =>
        box && column === 0 ? { value: `=R${String(row).padStart(6, "0")}` } : box && { ...box },
    );
  table.area.bottom = first + rows - 1;
  return host;
}

export async function checkJob(host: StandInHost) {
  const read = await cost(host, (context) => readExcel(context));
  const checked = check(read.value, 46_400);
  return { ...read, findings: checked.ok ? checked.report.findings.length : 0 };
}

const WEIGHTS: readonly Weight[] = ["stop", "query", "note"];

/** Marks findings on every second row, so that no two of them lie below each other. */
export async function markJob(host: StandInHost, rows: number) {
  const findings = Array.from(
    { length: rows },
    (_, index): Finding => ({
      rule: "invented",
      weight: WEIGHTS[index % 3] as Weight,
      sheet: "Insulation",
      address: `I${5 + index * 2}`,
      message: "Invented.",
    }),
  );
  const marked = await cost(host, (context) => markFindings(context, findings));
  const cleared = await cost(host, (context) => clearMarks(context));
  return { marked, cleared };
}

/** Writes into so many rows of one column. */
export const fillJob = (
  host: StandInHost,
  snapshot: Snapshot,
  rows: number,
  options?: FillOptions,
) =>
  cost(host, (context) =>
    applyFills(
      context,
      placed(
        snapshot,
        "GearInsulation",
        Array.from({ length: rows }, (_, row) => [row, "remarks", `line ${row}`] as const),
      ),
      options,
    ),
  );
