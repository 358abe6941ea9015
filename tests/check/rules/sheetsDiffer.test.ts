import { expect, test } from "vitest";
import { findingsOf, ofRule, sound } from "../support";

test.each([
  ["Cover", "GearProject", 4, "Value", "IEC"],
  ["Criteria", "GearCriteria", 0, "Value", 999],
  ["Equipment", "GearEquipment", 0, "Value", 999],
  ["Settings", "GearSettings", 0, "Sort", "B"],
  ["Panels", "GearPanels", 0, "Rated current A", 2500],
] as const)(
  "a change on the sheet %s, by which the records are not judged",
  (sheet, table, row, header, value) => {
    const book = sound();
    book.set(table, row, header, value);
    // A record sheet's own givens are held against the lineup besides.
    const found = findingsOf(book.snapshot).filter(({ rule }) => rule !== "given-differs");
    expect(found).toMatchObject([{ rule: "sheets-differ", weight: "query", sheet, address: "A1" }]);
    expect(found[0]?.message).toMatch(/change the lineup and build it/);
  },
);

test("nothing is said where the sheets tell the same", () => {
  expect(ofRule(sound().snapshot, "sheets-differ")).toEqual([]);
});
