import { expect, test } from "vitest";
import { check } from "../../support/checkBook";
import type { MemoryBook } from "../../support/memoryBook";
import { keepsQuiet, ofRule, sound, TODAY, WITHSTAND } from "../support";

keepsQuiet("missing-column", [
  ["a column added", (book) => book.rename(WITHSTAND, "Remarks", "Remarks")],
]);

test("a header renamed is named, and the table's rows still count", () => {
  const counts = (book: MemoryBook) => {
    const checked = check(book.snapshot, TODAY);
    return checked.ok
      ? Object.values(checked.report.counts).reduce((sum, count) => sum + count, 0)
      : 0;
  };
  const book = sound();
  const before = counts(book);
  book.rename(WITHSTAND, "Applied kV", "Test kV");
  expect(counts(book)).toBe(before);
  expect(ofRule(book.snapshot, "missing-column")).toMatchObject([
    {
      weight: "stop",
      sheet: "Withstand",
      address: "A4",
      expected: "Applied kV",
      message: expect.stringContaining("Give the column that header again"),
    },
  ]);
});

test("the remarks lost are a note", () => {
  const book = sound();
  book.rename(WITHSTAND, "Remarks", "Notes");
  expect(ofRule(book.snapshot, "missing-column").map(({ weight }) => weight)).toEqual(["note"]);
});
