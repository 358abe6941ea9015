import { expect, test } from "vitest";
import { takesCell } from "../../../src/sheets/cells/takesCell";

test.each([
  ["E6*1.25", true],
  ["$E$6+1", true],
  ["AVERAGE(D6:F6)", true],
  ["SUM(A1:H20)/2", true],
  ['IF(E6>=H$2,"pass","FAIL")', true],
  ["SUM(E:E)", true],
  ["MAX(2:6)", true],
  ["SUM(F:F)", false],
  ["E60*2", false],
  ["AE6*2", false],
  ["D6:D9", false],
  ["Other!E6*2", false],
  ["'IR own'!E6:F6", false],
  ['"E6"&A1', false],
  ["LOG10(A6)", false],
])("%s takes the cell E6: %s", (formula, takes) => {
  expect(takesCell(formula, 5, 4)).toBe(takes);
});
