import fc from "fast-check";
import { expect, test } from "vitest";
import type { Report } from "../../src/check/check";
import { changedRows } from "../../src/check/compare/changedRows";
import { nextSteps } from "../../src/check/progress/next";
import { planFor } from "../../src/sheets/plan/plan";
import type { Snapshot, TableSnapshot } from "../../src/sheets/snapshot";
import { check, reportOf as checkedReport, recheck } from "../support/checkBook";
import { filledPlan, SOUND } from "../support/fill";
import { longLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";

const TODAY = 46_400;
const reportOf = (snapshot: Snapshot): Report => checkedReport(snapshot, TODAY);

/** The same workbook with one cell of one table changed; every other table is the very same object. */
const edited = (
  snapshot: Snapshot,
  name: string,
  row: number,
  column: number,
  value: string | number | null,
) => ({
  ...snapshot,
  sheets: snapshot.sheets.map((sheet) => ({
    ...sheet,
    tables: sheet.tables.map(
      (table): TableSnapshot =>
        table.name === name
          ? {
              ...table,
              cell: (r, c) => (r === row && c === column ? value : table.cell(r, c)),
              formula: (r, c) => (r === row && c === column ? undefined : table.formula(r, c)),
            }
          : table,
    ),
  })),
});

test("a recheck after any edits comes to what a whole check comes to", () => {
  const start = memoryBook(filledPlan(longLineup(6), 3, SOUND)).snapshot;
  const before = reportOf(start);
  const tables = start.sheets.flatMap((sheet) => sheet.tables);
  const edit = fc
    .record({
      table: fc.constantFrom(...tables),
      row: fc.nat(),
      column: fc.nat(),
      value: fc.constantFrom(null, 0, 7, 1e6, "> 5 GΩ", "No", "OK", "?"),
    })
    .filter(({ table }) => table.rowCount > 0);
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
      let snapshot: Snapshot = start;
      let report = before;
      for (const { table, row, column, value } of edits) {
        snapshot = edited(
          snapshot,
          table.name,
          row % table.rowCount,
          column % table.headers.length,
          value,
        );
        const next = recheck(report, snapshot);
        if (!next.ok) return;
        report = next.report;
      }
      const whole = check(snapshot, TODAY);
      if (!whole.ok) throw new Error("the recheck did not see that the workbook tells no lineup");
      expect(report.counts).toEqual(whole.report.counts);
      expect(report.findings).toEqual(whole.report.findings);
    }),
    { numRuns: 40 },
  );
});

test("an edit of one table leaves what was judged of the others as it is", () => {
  const snapshot = memoryBook(filledPlan(longLineup(4), 3, SOUND)).snapshot;
  const before = reportOf(snapshot);
  const next = recheck(before, edited(snapshot, "GearTorque", 0, 5, 1));
  if (!next.ok) throw new Error(next.reason);
  for (const [at, table] of next.report.context.tables.entries())
    expect(table === before.context.tables[at]).toBe(table.table.name !== "GearTorque");
});

test("rows whose formulas look over others change with them", () => {
  const snapshot = memoryBook(filledPlan(longLineup(4), 3, SOUND)).snapshot;
  const before = reportOf(snapshot);
  const contact = before.context.tables.find(({ kind }) => kind.id === "contact");
  const reading = contact?.at.get("reading") ?? -1;
  const next = recheck(before, edited(snapshot, "GearContact", 0, reading, 5));
  if (!next.ok || !contact) throw new Error();
  const after = next.report.context.tables.find(({ kind }) => kind.id === "contact");
  if (!after) throw new Error();
  // The poles of one breaker are compared with their lowest.
  expect(changedRows(contact, after)).toEqual([0, 1, 2]);
});

test("what is next stands in the order of the work, with what blocks it", () => {
  const report = reportOf(memoryBook(planFor(longLineup(1))).snapshot);
  const steps = nextSteps(report.context).map(
    ({ kind, object, stage, blockedBy }) =>
      `${kind.id} ${object}${stage && ` ${stage}`}${blockedBy.map((one) => ` < ${one.kind.id}`).join("")}`,
  );
  expect(steps.indexOf("torque =K0001")).toBeLessThan(steps.indexOf("insulation =K0001 before"));
  expect(steps).toContain("contact =K0001 < torque");
  expect(steps).toContain("withstand =K0001 < insulation < gas");
  expect(steps).toContain("insulation =K0001 after < withstand");
  expect(steps.findIndex((step) => step.includes("<"))).toBeGreaterThan(
    steps.findLastIndex((step) => !step.includes("<")),
  );
});
