import { expect, test } from "vitest";
import { recordTables } from "../../../src/sheets/recordTable";
import { CONTACT, findingsOf, keepsQuiet, sound } from "../support";

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
