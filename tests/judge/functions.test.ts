import { describe, expect, it } from "vitest";
import { functions } from "../../src/functions/catalogue";
import { isErrorCode, type Outcomes, ourOutcomes, outcomeDifferences } from "./functionBook";
import { FUNCTION_CASES, NOT_NATIVE } from "./functionCases";
import { readJson } from "./outside";

/**
 * What LibreOffice computed from native formulas, written from the published formulas and the tests' own
 * tables (`npm run judge -- --keep`), against every worksheet function: values to 1e-9 relative, text to
 * the letter, and an error wherever the function refuses.
 *
 * KNEEPOINT and GASPRESSURE have no closed form: their native form is a row of cells, each a step. SOURCE
 * alone is not put natively (see `NOT_NATIVE`).
 */
const theirs = readJson<Outcomes>("tests/judged/functions.json");
const ours = ourOutcomes();

describe("worksheet functions against LibreOffice's own formulas", () => {
  it("covers every function, over a few thousand cases", () => {
    expect([...Object.keys(FUNCTION_CASES), ...NOT_NATIVE].toSorted()).toEqual(
      Object.keys(functions).toSorted(),
    );
    const cases = Object.values(FUNCTION_CASES).reduce((sum, list) => sum + list.length, 0);
    expect(cases).toBeGreaterThan(3000);
  });

  it.each(Object.keys(FUNCTION_CASES))("%s", (name) => {
    expect(theirs[name]).toHaveLength(FUNCTION_CASES[name]?.length ?? -1);
    expect(outcomeDifferences(ours, theirs, name)).toEqual([]);
  });

  it.each(Object.keys(FUNCTION_CASES))("%s is asked inside and outside its range", (name) => {
    const answered = (theirs[name] ?? []).filter((value) => !isErrorCode(value)).length;
    expect(answered).toBeGreaterThan(20);
    expect((theirs[name] ?? []).length - answered).toBeGreaterThan(5);
  });

  it("a billionth too much is a difference, and so is an answer where there should be none", () => {
    const name = "DEWPOINT";
    const at = ours[name]?.findIndex((value) => typeof value === "number") ?? 0;
    const changed = (value: number | string) => ({
      ...theirs,
      [name]: (theirs[name] ?? []).map((old, i) => (i === at ? value : old)),
    });
    const value = Number(ours[name]?.[at]);
    expect(outcomeDifferences(ours, changed(value * (1 + 3e-9)), name)).toHaveLength(1);
    expect(outcomeDifferences(ours, changed("#N/A"), name)).toHaveLength(1);
  });
});
