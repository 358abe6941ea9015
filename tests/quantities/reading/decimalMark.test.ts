import { expect, test } from "vitest";
import { decimalMark } from "../../../src/quantities/reading/decimalMark";
import { inWords } from "../../support/inWords";

test("the text that can be read one way only decides, and is named", () => {
  expect(inWords(decimalMark(["1,250", "serial", "0,82"]))).toEqual({
    mark: ",",
    isOpen: false,
    evidence: 'decimal comma, because "0,82" on line 3 can be read no other way',
  });
  expect(inWords(decimalMark(["1,250,000 MΩ", "OL > 2 TΩ"], 14))).toEqual({
    mark: ".",
    isOpen: false,
    evidence: 'decimal point, because "1,250,000 MΩ" on line 14 can be read no other way',
  });
});

test("two texts that contradict each other leave it open, and both are named", () => {
  expect(inWords(decimalMark(["0,82", "1", "2.5"]))).toEqual({
    mark: undefined,
    isOpen: true,
    isContradicted: true,
    evidence:
      'no one decimal mark, because "2.5" on line 3 needs a decimal point and "0,82" on line 1 a decimal comma',
  });
});

test("nothing that settles it is said too", () => {
  expect(inWords(decimalMark(["1,250", "12"]))).toEqual({
    mark: undefined,
    isOpen: true,
    evidence:
      'decimal mark unknown, because "1,250" on line 1 could be read either way and nothing else settles it',
  });
  expect(inWords(decimalMark(["12", "OL"]))).toEqual({
    mark: undefined,
    isOpen: false,
    evidence: "no decimal mark in use: every number is whole",
  });
});

test("dates and names prove nothing", () => {
  expect(decimalMark(["03.11.2026", "=H01, rear", "1.2.3"]).mark).toBeUndefined();
});
