import { expect, test } from "vitest";
import { fromItsRow } from "../../src/check/formulas/fromItsRow";

test("a formula filled down is the same text on every row", () => {
  expect(fromItsRow("C7*$B$2", 5)).toBe("C[2]*$B$2");
  expect(fromItsRow("C8*$B$2", 6)).toBe("C[2]*$B$2");
  expect(fromItsRow("IF($D10>LOG10(E9),'Sheet 1'!B10,\"A1\")", 8)).toBe(
    "IF($D[2]>LOG10(E[1]),'Sheet 1'!B[2],\"A1\")",
  );
});

test("another row, a dollar sign or another word is another text", () => {
  const texts = [
    fromItsRow("C7*2", 5),
    fromItsRow("C7*2", 6),
    fromItsRow("C$7*2", 5),
    fromItsRow("C7*3", 5),
    fromItsRow('C7*"C7"', 5),
    fromItsRow('C7*"C8"', 5),
  ];
  expect(new Set(texts).size).toBe(texts.length);
});

test("headers in brackets are no addresses, and areas of several rows differ from row to row", () => {
  expect(fromItsRow("T[[#This Row],[L1]]", 5)).toBe(fromItsRow("T[[#This Row],[L1]]", 6));
  expect(fromItsRow("MIN(C5:C9)", 5)).not.toBe(fromItsRow("MIN(C6:C10)", 6));
  expect(fromItsRow("SUM(C5:E5)", 5)).toBe(fromItsRow("SUM(C6:E6)", 6));
});
