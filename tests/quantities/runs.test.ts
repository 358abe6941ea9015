import { expect, test } from "vitest";
import { runs } from "../../src/quantities/runs";
import { english } from "../support/inWords";

test.each([
  [[], ""],
  [[3], "3"],
  [[3, 4], "3 and 4"],
  [[3, 5, 6, 7], "3 and 5 to 7"],
  [Array.from({ length: 62 }, (_, at) => at + 3), "3 to 64"],
  [
    Array.from({ length: 20 }, (_, at) => 2 * at),
    "0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22 and 8 others",
  ],
])("%o", (numbers, words) => {
  expect(runs(numbers, english)).toBe(words);
});
