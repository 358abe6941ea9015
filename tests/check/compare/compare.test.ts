import { expect, test } from "vitest";
import { compareReports } from "../../../src/check/compare/compare";
import { historySheet } from "../../../src/sheets/ours/historySheet";
import type { Snapshot } from "../../../src/sheets/snapshot";
import { reportOf as checkedReport } from "../../support/checkBook";
import { filledPlan, SOUND } from "../../support/fill";
import { EARTH_BAR, longLineup } from "../../support/lineups";
import { type MemoryBook, memoryBook } from "../../support/memoryBook";

const book = (jointMicroOhm = 50, panels = 3) =>
  memoryBook(
    filledPlan(
      longLineup(panels, {
        criteria: [
          {
            from: "project",
            quantity: "joint resistance µΩ",
            value: jointMicroOhm,
            document: "invented",
          },
          EARTH_BAR,
        ],
      }),
      11,
      {
        ...SOUND,
        GearWithstand: (row, next) => ({ ...SOUND.GearWithstand?.(row, next), applied: 27 }),
      },
    ),
  );
const reportOf = ({ snapshot }: MemoryBook) => checkedReport(snapshot, 46_352);

test("a workbook compared with itself: nothing closed, new or altered", () => {
  const one = reportOf(book());
  expect(compareReports(one, one)).toEqual({
    closed: [],
    fresh: [],
    changed: [],
    same: one.findings.length,
    altered: [],
  });
});

test("findings closed, new and changed, and the readings behind them", () => {
  const before = book();
  before.set("GearTorque", 0, "Applied N·m", 20);
  before.set("GearContact", 1, "R µΩ", 80);
  before.set("GearInsulation", 3, "Tested by", null);
  const after = book();
  after.set("GearTorque", 0, "Applied N·m", 25);
  after.set("GearEarthing", 0, "Tested by", null);
  after.set("GearInsulation", 3, "Tested by", null);
  const { closed, fresh, changed, same, altered } = compareReports(
    reportOf(before),
    reportOf(after),
  );
  const of = ({ rule, sheet }: { rule: string; sheet: string }) => `${rule} ${sheet}`;
  expect(closed.map(of)).toContain("out-of-limits Contacts");
  expect(fresh.map(of)).toEqual(["missing-trail Earthing"]);
  expect(changed.map(({ after: one }) => of(one))).toContain("out-of-limits Torque");
  expect(same).toBeGreaterThan(0);
  expect(altered).toEqual([
    expect.objectContaining({ sheet: "Torque", column: "Applied N·m", before: 20, after: 25 }),
    expect.objectContaining({ sheet: "Earthing", column: "Tested by", after: null }),
    expect.objectContaining({ sheet: "Contacts", column: "R µΩ", before: 80 }),
  ]);
});

test("a row that moved is the same row", () => {
  const before = book();
  before.set("GearContact", 0, "R µΩ", 80);
  const after = book();
  after.set("GearContact", 0, "R µΩ", 80);
  after.copyRow("GearContact", 0);
  after.removeRow("GearContact", 0);
  const { closed, fresh, altered } = compareReports(reportOf(before), reportOf(after));
  expect(closed).toEqual([]);
  expect(fresh).toEqual([]);
  expect(altered).toEqual([]);
});

test("a lineup that was rewritten throughout is told by the limits that became others, each change once", () => {
  const { altered } = compareReports(reportOf(book(50)), reportOf(book(80)));
  expect(altered).toMatchObject([
    { sheet: "Contacts", column: "Maximum µΩ", before: 50, after: 80, rows: expect.any(Number) },
  ]);
  expect(altered[0]?.rows).toBeGreaterThan(3);
});

test("a panel that was taken out of the lineup with its records is told, table by table", () => {
  const { altered } = compareReports(reportOf(book(50, 3)), reportOf(book(50, 2)));
  // The joint of the panel before it goes with it.
  const gone = altered.filter(({ after }) => after === null);
  expect(new Set(gone.map(({ row }) => row))).toEqual(new Set(["=K0003", "=K0002"]));
  expect(gone.map(({ sheet }) => sheet)).toEqual(
    expect.arrayContaining(["Torque", "Contacts", "Timing", "Installation"]),
  );
  expect(gone.find(({ sheet }) => sheet === "Timing")).toMatchObject({
    before: "=K0003",
    after: null,
    rows: 2,
  });
});

test("an entry of the reading history that is gone is told with what it held", () => {
  const history = (...values: readonly number[]): Snapshot => {
    const { snapshot } = book();
    const { sheet, table, columns } = historySheet();
    const row = ["Contacts", "=K0001 · Breaker Q0 · L1", "R µΩ"];
    return {
      ...snapshot,
      sheets: [
        ...snapshot.sheets,
        {
          name: sheet,
          tables: [
            {
              name: table,
              sheet,
              top: 3,
              left: 0,
              headers: columns.map(({ header }) => header),
              rowCount: values.length,
              cell: (at, column) =>
                column < 3 ? (row[column] ?? null) : column === 3 ? (values[at] ?? null) : null,
              formula: () => undefined,
            },
          ],
        },
      ],
    };
  };
  const compared = (before: Snapshot, after: Snapshot) =>
    compareReports(checkedReport(before, 46_352), checkedReport(after, 46_352)).altered;
  expect(compared(history(41), history(41, 43))).toEqual([]);
  expect(compared(history(41, 43), history(43))).toMatchObject([
    { sheet: "Reading history", column: "R µΩ", before: 41, after: null },
  ]);
});
