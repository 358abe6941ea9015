import { expect, test } from "vitest";
import { runs } from "../../src/quantities/runs";

test.each([
  [[], ""],
  [[3], "3"],
  [[3, 4], "3 and 4"],
  [[3, 5, 6, 7], "3 and 5 to 7"],
  [Array.from({ length: 62 }, (_, at) => at + 3), "3 to 64"],
  [[1, 3, 5, 7, 9, 11, 13, 15, 17, 19], "1, 3, 5, 7, 9, 11, 13, 15 and others"],
])("%o", (numbers, words) => {
  expect(runs(numbers)).toBe(words);
});
