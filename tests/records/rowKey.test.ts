import { expect, test } from "vitest";
import { rowKey } from "../../src/records/kind";

test.each([
  [{ object: "=H01", part: "Breaker", pole: "L1" }, "=H01 · Breaker · L1"],
  [{ object: null, part: "Breaker", pole: "L1" }, " · Breaker · L1"],
  [{ object: "=H01", part: "", pole: " L1 " }, "=H01 ·  · L1"],
  [{}, " ·  · "],
])(
  "rows are named by their key cells, each in its place also where one is blank: %j",
  (row, key) => {
    expect(rowKey(row, ["object", "part", "pole"])).toBe(key);
  },
);
