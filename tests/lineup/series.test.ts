import { expect, test } from "vitest";
import { nextFree, series } from "../../src/lineup/series";

test.each([
  ["=H08", 3, ["=H08", "=H09", "=H10"]],
  ["A1-K", 2, ["A1-K", "A2-K"]],
  ["=99", 2, ["=99", "=100"]],
  ["Incomer", 2, ["Incomer1", "Incomer2"]],
  ["+S1=H7", 2, ["+S1=H7", "+S1=H8"]],
])("%s counts on %i times", (first, count, found) => {
  expect(series(first, count)).toEqual(found);
});

test("the next designation is one that no other bears", () => {
  expect(nextFree("=H01", ["=H01", "=H02", "=H04"])).toBe("=H03");
  expect(nextFree("=H01", [])).toBe("=H01");
});
