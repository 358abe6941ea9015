import { expect, test } from "vitest";
import { asBefore, asCell, asFormula, asInput } from "../../../src/excel/read/cellValues";
import { entered } from "../../../src/standin/entered";

test.each([
  "=K01",
  "007",
  "1E3",
  "5.2 GΩ",
  "> 2 TΩ",
  "L1-E",
  "Bus A",
  "May 5",
  "March 2026",
  "5-6",
  "TRUE",
  "false",
  "+K1",
  "-X1",
  "@home",
  "'quoted",
  "50 %",
  "#N/A",
  "• a caution\n• another",
  "L1 open",
])("%s stays the text that it is", (text) => {
  expect(entered(asInput(text))).toEqual({ value: text });
});

test.each([["Busbar"], ["L1-E"], ["> 2 TΩ"], ["R 1 min MΩ"], ["No"]])(
  "%s needs no apostrophe",
  (text) => {
    expect(asInput(text)).toBe(text);
  },
);

test("numbers, truths and blanks are given as they are", () => {
  expect([asInput(5), asInput(true), asInput(null), asInput("")]).toEqual([5, true, "", ""]);
  expect([asCell(""), asCell(0), asCell("x")]).toEqual([null, 0, "x"]);
});

test("text that begins with an equals sign is told from a formula by its value", () => {
  expect(asFormula("=K01", "=K01")).toBeUndefined();
  expect(asFormula("=A1*2", 8)).toBe("=A1*2");
  expect(asFormula(8, 8)).toBeUndefined();
});

test("what was read can be written back: a formula, text, a number, a blank", () => {
  expect(asBefore("=A1*2", 8)).toBe("=A1*2");
  expect(asBefore("=K01", "=K01")).toBe("'=K01");
  expect(asBefore(8, 8)).toBe(8);
  expect(asBefore("", "")).toBe("");
});
