import { expect, test } from "vitest";
import { mappable, mappedTo } from "../../../src/intake/words/mappedTo";
import { english } from "../../support/inWords";

test.each([
  ["position", "position"],
  ["combination", "position"],
  ["Combination", "position"],
  ["pole", "position"],
  ["Tested by", "by"],
  ["date of test", "date"],
  ["testCurrent", "testCurrent"],
  ["ir of L1-E before", "resistance of L1-E before"],
  ["Limit", "limit"],
  ["left out", "left out"],
  ["panle", undefined],
  ["panle of L1", undefined],
])("a title mapped to %s", (said, meant) => {
  expect(mappedTo(said)).toBe(meant);
});

test("every word that is named for a mapping is one", () => {
  const [, list = ""] = /one of (.*); or a trade word/.exec(mappable(english)) ?? [];
  const words = list
    .replace(/ \([^)]*\)/g, "")
    .replace(", which are compared", "")
    .split(/[,;] /);
  expect(words).toEqual(expect.arrayContaining(["position", "limit", "corrected", "left out"]));
  expect(words.filter((word) => mappedTo(word) !== word)).toEqual([]);
});
