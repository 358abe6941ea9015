import { expect, test } from "vitest";
import { recordTables } from "../../../src/sheets/recordTable";
import { CONTACT, findingsOf, INSULATION, keepsQuiet, sound } from "../support";

keepsQuiet("not-calculated", [
  ["one result that has no value", (book) => book.set(CONTACT, 0, "Result", null)],
]);

test("formulas without stored values are said once for the workbook, with every table's name", () => {
  const book = sound();
  book.forget();
  const found = findingsOf(book.snapshot);
  const tables = recordTables(book.snapshot).map(({ table }) => table);
  expect(found.map(({ rule, sheet, address }) => [rule, sheet, address])).toEqual([
    ["not-calculated", tables[0]?.sheet, "A4"],
  ]);
  expect(tables.length).toBeGreaterThan(10);
  for (const { name } of tables) expect(found[0]?.message).toContain(`"${name}"`);
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
});
