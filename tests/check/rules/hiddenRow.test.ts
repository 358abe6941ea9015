import { expect, test } from "vitest";
import type { Snapshot } from "../../../src/sheets/snapshot";
import { CONTACT, ofRule, sound } from "../support";

/** The workbook with rows of a table hidden, or its sheet. */
const hiding = (table: string, rows: readonly number[], sheet = false): Snapshot => {
  const { snapshot } = sound();
  return {
    ...snapshot,
    sheets: snapshot.sheets.map((one) =>
      one.tables[0]?.name === table
        ? {
            ...one,
            hidden: sheet,
            tables: one.tables.map((each) => ({ ...each, hidden: new Set(rows) })),
          }
        : one,
    ),
  };
};

test("neighbouring rows that are hidden are told as one", () => {
  const found = ofRule(hiding(CONTACT, [5, 3, 4]), "hidden-row");
  expect(found.map(({ address, weight }) => [address, weight])).toEqual([["A8", "query"]]);
  expect(found[0]?.message).toContain("3 rows are hidden or filtered away; show them");
});

test("a sheet that is hidden is told at its table's head", () => {
  const found = ofRule(hiding(CONTACT, [], true), "hidden-row");
  expect(found.map(({ sheet, address }) => [sheet, address])).toEqual([["Contacts", "A4"]]);
  expect(found[0]?.message).toMatch(/is hidden; show it/);
});

test("nothing is said of rows below the table, or where nothing is known of hidden rows", () => {
  expect(ofRule(hiding(CONTACT, [4000]), "hidden-row")).toEqual([]);
  expect(ofRule(sound().snapshot, "hidden-row")).toEqual([]);
});
