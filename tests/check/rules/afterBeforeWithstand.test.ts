import { expect, test } from "vitest";
import { finds, INSULATION, keepsQuiet, ofRule, sound, WITHSTAND } from "../support";

finds("after-before-withstand", [
  {
    name: "insulation after that is dated before the withstand test",
    spoil: (book) => book.set(INSULATION, 24, "Date", 46_341),
    table: INSULATION,
    row: 24,
    header: "Date",
    weight: "query",
    says: /dated 2026-11-15, before the withstand test of 2026-11-16 that it should follow/,
  },
]);

keepsQuiet("after-before-withstand", [
  ["the day of the withstand test itself", (book) => book.set(INSULATION, 24, "Date", 46_342)],
  ["no date: said by another rule", (book) => book.set(INSULATION, 24, "Date", null)],
  ["insulation before the test", (book) => book.set(INSULATION, 2, "Date", 46_330)],
]);

test("where no withstand test is dated, the measurement before counts", () => {
  const book = sound();
  for (const row of [0, 1, 2]) book.set(WITHSTAND, row, "Date", null);
  book.set(INSULATION, 24, "Date", 46_300);
  const found = ofRule(book.snapshot, "after-before-withstand");
  expect(found.map(({ address }) => address)).toEqual([book.at(INSULATION, 24, "Date")]);
  expect(found[0]?.message).toMatch(/before the measurement "before" of .* that it should follow/);
});
