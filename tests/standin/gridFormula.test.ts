import { expect, test } from "vitest";
import { planFor } from "../../src/sheets/plan/plan";
import { gridFormula } from "../../src/standin/bench/gridFormula";
import { bookOfPlan } from "../../src/standin/bookOfPlan";
import { equipped, longLineup } from "../support/lineups";

const book = bookOfPlan(planFor(equipped(longLineup(1))));
const sheet = book.sheets.find(({ name }) => name === "Excitation");

/** Row 8 of the sheet, its table's columns from A on: Panel, Core, Phase, Class, Knee rule, V 1 … V 10. */
test.each([
  ["COUNT(GearExcitation[[#This Row],[V 1]:[V 10]])", "=COUNT(F8:O8)"],
  ["GearExcitation[[#This Row],[Panel]]", "=A8"],
  ["COUNT([@[V 1]:[V 3]])", "=COUNT(F8:H8)"],
  ["GearExcitation[[#This Row],[V 3]:[V 1]]", "=#REF!"],
  ["GearExcitation[[#This Row],[V 1]:[V 99]]", "=#REF!"],
])("%s in the grid: %s", (formula, wanted) => {
  if (!sheet) throw new Error("no such sheet");
  expect(gridFormula(book, sheet, 7, formula)).toBe(wanted);
});
