import { expect, test } from "vitest";
import type { Snapshot } from "../../../src/sheets/snapshot";
import { ofRule, sound } from "../support";

/** The workbook with the sheet of a table hidden. */
const hiding = (table: string): Snapshot => {
  const { snapshot } = sound();
  const has = (one: Snapshot["sheets"][number]) => one.tables[0]?.name === table;
  return {
    ...snapshot,
    sheets: snapshot.sheets.map((one) => (has(one) ? { ...one, hidden: true } : one)),
  };
};

test("a list that goes with the records is told where its sheet is hidden, and not where it holds nothing", () => {
  const found = ofRule(hiding("GearInstruments"), "hidden-list");
  expect(found.map(({ sheet, weight }) => [sheet, weight])).toEqual([["Instruments", "query"]]);
  expect(ofRule(hiding("GearConcessions"), "hidden-list")).toEqual([]);
  expect(ofRule(sound().snapshot, "hidden-list")).toEqual([]);
});
