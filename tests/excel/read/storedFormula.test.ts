import { expect, test } from "vitest";
import { enteredFormula, storedFormula } from "../../../src/excel/read/storedFormula";
import { planFor } from "../../../src/sheets/plan/plan";
import { reconcile } from "../../../src/sheets/plan/reconcile";
import { shown } from "../../../src/standin/entered";
import { sampleLineup } from "../../support/lineups";

const T = "GearInsulation";

test.each([
  [
    "this row, table named",
    "=GEAR.F(GearInsulation[@[R 1 min MΩ]])",
    "_xldudf_GEAR_F(GearInsulation[[#This Row],[R 1 min MΩ]])",
  ],
  [
    "this row, table left out",
    "=GEAR.F([@[R 1 min MΩ]])",
    "_xldudf_GEAR_F(GearInsulation[[#This Row],[R 1 min MΩ]])",
  ],
  ["this row, one word", "=N([@DAR])", "N(GearInsulation[[#This Row],[DAR]])"],
  [
    "text and numbers beside it",
    '=GEAR.IRMINIMUM([@[Rated kV]],"IEC")',
    '_xldudf_GEAR_IRMINIMUM(GearInsulation[[#This Row],[Rated kV]],"IEC")',
  ],
  ["as typed", "=N(GearInsulation[[#This Row],[DAR]])", "N(GearInsulation[[#This Row],[DAR]])"],
  ["before the add-in has loaded", "=_xldudf_GEAR_F(1)", "_xldudf_GEAR_F(1)"],
  ["lower case", "=gear.F(1)", "_xldudf_GEAR_F(1)"],
  ["a later function", "=AGGREGATE(15,6,[DAR],1)", "_xlfn.AGGREGATE(15,6,GearInsulation[DAR],1)"],
  ["a whole column of another table", "=MIN(GearContact[R µΩ])", "MIN(GearContact[R µΩ])"],
  ["several columns", "=SUM([@[A]:[B]])", "SUM(GearInsulation[[#This Row],[A]:[B]])"],
  ["the whole row", "=COUNTA([@])", "COUNTA(GearInsulation[#This Row])"],
  ["text that looks like a reference", '="[@DAR] GEAR.F("&A1', '"[@DAR] GEAR.F("&A1'],
  ["escaped brackets", "=[@[a '[b']]]", "GearInsulation[[#This Row],[a '[b']]]"],
])("%s", (_name, text, stored) => {
  expect(storedFormula(text, T)).toBe(stored);
});

test("every formula of a plan comes back from each form that Excel may show", () => {
  const formulas = reconcile(planFor(sampleLineup())).create.flatMap(({ planned, writes }) =>
    writes.flatMap(({ formula }) =>
      formula === undefined ? [] : [{ formula, table: planned.table }],
    ),
  );
  const distinct = new Map(formulas.map((one) => [one.formula, one]));
  expect(distinct.size).toBeGreaterThan(10);
  for (const { formula, table } of distinct.values()) {
    const entered = enteredFormula(formula);
    expect(entered).not.toMatch(/_xl/);
    for (const text of [formula, `=${formula}`, entered, `=${shown(formula, table)}`])
      expect(storedFormula(text, table)).toBe(formula);
  }
});

test("a stored formula is given to Excel with the names that its users know", () => {
  expect(enteredFormula("_xldudf_GEAR_IRMINIMUM(12)")).toBe("=GEAR.IRMINIMUM(12)");
  expect(enteredFormula("_xlfn.AGGREGATE(15,6,T[R],1)")).toBe("=AGGREGATE(15,6,T[R],1)");
});
