import { expect, test } from "vitest";
import { readNumber } from "../../../src/quantities/reading/readNumber";

test.each([
  ["1250", { plain: "1250" }],
  ["1 250,5", { plain: "1250.5", mark: "," }],
  ["1,250", { plain: "1.250", ambiguous: "," }],
  ["1.250", { plain: "1.250", ambiguous: "." }],
  ["0.250", { plain: "0.250", mark: "." }],
  ["1250.125", { plain: "1250.125", mark: "." }],
  ["1 250.125", { plain: "1250.125", mark: "." }],
  ["1,250,000", { plain: "1250000", mark: "." }],
  ["1,25,000", { plain: "125000", mark: "." }],
  ["1'250.5", { plain: "1250.5", mark: "." }],
  ["12,34,56", undefined],
  ["1 250'000", undefined],
  ["0,250,000", undefined],
  ["1.2.3", undefined],
  ["1 25", undefined],
  ["", undefined],
])("%s", (text, expected) => {
  expect(readNumber(text)).toEqual(expected);
});

test("in a mantissa the only mark is decimal", () => {
  expect(readNumber("1,250", true)).toEqual({ plain: "1.250", mark: "," });
  expect(readNumber("1,250,000", true)).toBeUndefined();
});
