import { expect, test } from "vitest";
import { recordTables } from "../../../src/sheets/recordTable";
import { CONTACT, findingsOf, INSULATION, keepsQuiet, sound } from "../support";

keepsQuiet("not-calculated", [
  ["one result that has no value", (book) => book.set(CONTACT, 0, "Result", null)],
]);

test("formulas without stored values are said once for a table, not at every cell", () => {
  const book = sound();
  book.forget();
  const found = findingsOf(book.snapshot);
  expect(found.map(({ rule, address }) => [rule, address])).toEqual(
    recordTables(book.snapshot).map(() => ["not-calculated", "A4"]),
  );
  expect(found[0]?.message).toContain("Open it in a spreadsheet with the add-in and save it");
});

test("what was typed into a table that was not calculated is compared all the same, and alone", () => {
  const book = sound();
  book.forget();
  book.set(INSULATION, 3, "Minimum MΩ", 1);
  book.set(CONTACT, 2, "Result", "Fail");
  const found = findingsOf(book.snapshot).filter(({ rule }) => rule !== "not-calculated");
  expect(found.map(({ rule, address }) => [rule, address])).toEqual(
    expect.arrayContaining([
      ["limit-differs", book.at(INSULATION, 3, "Minimum MΩ")],
      ["result-disagrees", book.at(CONTACT, 2, "Result")],
    ]),
  );
  expect(found).toHaveLength(2);
  expect(findingsOf(book.snapshot).filter(({ rule }) => rule === "not-calculated")).toHaveLength(
    recordTables(book.snapshot).length,
  );
});
