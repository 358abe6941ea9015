import { expect, test } from "vitest";
import { INSULATION, keepsQuiet, ofRule, sound, WITHSTAND } from "../support";

keepsQuiet("withstand-before-insulation", [
  [
    "a withstand row without a reading",
    (book) => {
      book.set(INSULATION, 0, "R 1 min MΩ", null);
      for (const row of [0, 1, 2]) book.set(WITHSTAND, row, "Applied kV", null);
    },
  ],
]);

test("a withstand test on a circuit whose insulation has not passed is found once, with each of its phases", () => {
  const book = sound();
  book.set(INSULATION, 0, "R 1 min MΩ", null);
  const found = ofRule(book.snapshot, "withstand-before-insulation");
  const [first, ...further] = [0, 1, 2].map((row) => book.at(WITHSTAND, row, "Applied kV"));
  expect(found).toMatchObject([{ address: first, weight: "stop", further }]);
  expect(found[0]?.message).toContain("L1-E: Missing");
});

test("so is one that was made before the insulation was measured", () => {
  const book = sound();
  book.set(WITHSTAND, 1, "Date", 46_330);
  const found = ofRule(book.snapshot, "withstand-before-insulation");
  expect(found.map(({ address }) => address)).toEqual([book.at(WITHSTAND, 1, "Applied kV")]);
  expect(found[0]?.message).toMatch(/tested on 2026-11-04, before its insulation "before" was/);
});

test("where one row is open, another that was measured too late is named beside it", () => {
  const book = sound();
  book.set(INSULATION, 0, "R 1 min MΩ", null);
  book.set(INSULATION, 1, "Date", 46_349);
  const [found] = ofRule(book.snapshot, "withstand-before-insulation");
  expect(found?.message).toContain("L1-E: Missing, L2-E: 2026-11-23");
});
