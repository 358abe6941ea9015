import { expect, test } from "vitest";
import { CONTACT, findingsOf, finds, INSULATION, keepsQuiet, ofRule, sound } from "../support";

finds("sources-differ", [
  {
    name: "a source worded otherwise",
    spoil: (book) => book.set(INSULATION, 2, "Sources of limits", "minimum: as in the older book"),
    table: INSULATION,
    row: 2,
    header: "Sources of limits",
    weight: "note",
    says: /are worded otherwise than now\. Limits are compared by themselves\./,
  },
]);

keepsQuiet("sources-differ", [
  ["a rating: said by another rule", (book) => book.set(INSULATION, 2, "Rated kV", 7.2)],
]);

test("a workbook that was built earlier is told once, and nothing else is said of it", () => {
  const book = sound();
  for (const row of [2, 3, 4]) book.set(INSULATION, row, "Sources of limits", "worded otherwise");
  for (const row of [0, 1]) book.set(CONTACT, row, "Sources of limits", "worded otherwise");
  const found = findingsOf(book.snapshot);
  expect(found.map(({ rule }) => rule)).toEqual(["sources-differ"]);
  expect(ofRule(book.snapshot, "sources-differ")[0]?.message).toContain("4 further rows");
});
