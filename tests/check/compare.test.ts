import { expect, test } from "vitest";
import { compareReports } from "../../src/check/compare";
import { reportOf as checkedReport } from "../support/checkBook";
import { filledPlan, SOUND } from "../support/fill";
import { EARTH_BAR, longLineup } from "../support/lineups";
import { type MemoryBook, memoryBook } from "../support/memoryBook";

const book = () =>
  memoryBook(
    filledPlan(
      longLineup(3, {
        criteria: [
          { from: "project", quantity: "joint resistance µΩ", value: 50, document: "invented" },
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
