import { expect, test } from "vitest";
import { planFor } from "../../src/sheets/plan/plan";
import { reconcile } from "../../src/sheets/plan/reconcile";
import { check } from "../support/checkBook";
import { filledPlan } from "../support/fill";
import { longLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";
import { findingsOf, ofRule, sound, soundlyEquipped, TODAY } from "./support";

test("a sound workbook has no findings and every row passes", () => {
  const checked = check(sound().snapshot, TODAY);
  if (!checked.ok) throw new Error(checked.reason);
  expect(checked.report.findings).toEqual([]);
  const { pass, ...others } = checked.report.counts;
  expect(pass).toBeGreaterThan(50);
  expect(Object.values(others)).toEqual([0, 0, 0, 0, 0]);
});

test("a record kind that the lineup needs no row of has no sheet, and its lack is no finding", () => {
  const lineup = longLineup(2);
  const bare = {
    ...lineup,
    panels: lineup.panels.map((panel) => ({
      ...panel,
      joints: [],
      breaker: panel.breaker && { ...panel.breaker, gas: undefined },
    })),
  };
  const book = memoryBook(filledPlan(bare, 3));
  const sheets = book.snapshot.sheets.map(({ name }) => name);
  expect(sheets).toContain("Timing");
  expect(sheets).not.toContain("Torque");
  expect(sheets).not.toContain("Gas");
  expect(findingsOf(book.snapshot).filter(({ rule }) => rule === "missing-row")).toEqual([]);
  const grown = reconcile(planFor(lineup), book.snapshot);
  expect(grown.create.map(({ planned }) => planned.sheet).sort()).toEqual(["Gas", "Torque"]);
});

test("what does not apply is not required, and its reason is asked for", () => {
  const book = sound();
  book.set("GearInstallation", 2, "State", "Not applicable");
  expect(ofRule(book.snapshot, "exempt-unexplained")).toMatchObject([
    { weight: "query", sheet: "Installation", message: expect.stringContaining("say in the rem") },
  ]);
  book.set("GearInstallation", 2, "Remarks", "Panel without a circuit.");
  const checked = check(book.snapshot, TODAY);
  // The stored result is still the old one: nobody calculated.
  expect(checked.ok && checked.report.findings.map(({ rule }) => rule)).toEqual([
    "result-disagrees",
  ]);
  expect(checked.ok && checked.report.counts).toMatchObject({ notRequired: 1, missing: 0 });
});

test("a kind that the project leaves out has no sheet, is not asked for, and stands on the cover", () => {
  const left = { kind: "torque" as const, reason: "Done at the works", document: "INV-7" };
  const lineup = longLineup(2, { leaveOut: [left] });
  const book = memoryBook(filledPlan(lineup, 4));
  expect(book.snapshot.sheets.map(({ name }) => name)).not.toContain("Torque");
  expect(ofRule(book.snapshot, "missing-row")).toEqual([]);
  expect(planFor(lineup).sheets[0]?.rows.at(-1)).toEqual({
    item: "Left out: Torque of bolted joints",
    value: "Done at the works (INV-7)",
  });
});

test("a workbook that cannot be checked says why and what would be right", () => {
  const none = check({ sheets: [] }, TODAY);
  expect(none.ok ? "" : none.reason).toMatch(/no record tables; build them from a lineup/);
  const { sheets } = sound().snapshot;
  const strange = check({ sheets: sheets.filter(({ name }) => name !== "Panels") }, TODAY);
  expect(strange.ok ? "" : strange.reason).toMatch(/does not tell its lineup/);
});

test("the check leaves the snapshot as it was", () => {
  const book = sound();
  const cells = () =>
    book.snapshot.sheets.flatMap(({ tables }) =>
      tables.flatMap((table) =>
        Array.from({ length: table.rowCount }, (_, row) =>
          table.headers.map((_, column) => table.cell(row, column)),
        ),
      ),
    );
  const before = structuredClone(cells());
  findingsOf(book.snapshot);
  expect(cells()).toEqual(before);
});

test("sound records of every kind come to no finding, though some limits are n/a", () => {
  const book = soundlyEquipped();
  expect(findingsOf(book.snapshot)).toEqual([]);
  const said = book.snapshot.sheets
    .filter(({ name }) => name === "Current transformers")
    .flatMap(({ tables }) =>
      tables.flatMap(({ headers, cell, rowCount }) =>
        Array.from({ length: rowCount }, (_, row) =>
          cell(row, headers.indexOf("Plate Ω at 75 °C")),
        ),
      ),
    );
  expect(said).toContain("n/a");
  expect(said).toContain(4);
});

test.each([
  ["a limit written off by hand", "Plate Ω at 75 °C", 6, "n/a", "limit-differs"],
  ["a reversed polarity", "Polarity", 0, "Reversed", "out-of-limits"],
  ["a polarity that is not answered", "Polarity", 0, null, "missing-condition"],
  ["a ratio that no class allows", "Injected A", 3, 60, "out-of-limits"],
] as const)("current transformers: %s", (_name, header, row, value, rule) => {
  const book = soundlyEquipped();
  book.set("GearCurrentTransformers", row, header, value);
  book.forget();
  const found = findingsOf(book.snapshot).filter(
    ({ rule, record }) => record === "currentTransformer" && rule !== "not-calculated",
  );
  expect(found.map(({ rule }) => rule)).toContain(rule);
});
