import { describe, expect, test } from "vitest";
import { KINDS } from "../../src/records/kinds";
import { tableReference } from "../../src/sheets/cells/formula";
import { equipped, sampleLineup } from "../support/lineups";

// Microsoft, "Excel specifications and limits": a formula holds at most 8,192 characters and 64 levels.
describe.each(KINDS.map((kind) => [kind.id, kind] as const))("formulas of %s", (_id, kind) => {
  const lineup = equipped(sampleLineup());
  const formulas = kind.columns.flatMap(({ id, formula }) =>
    formula ? [[id, formula(tableReference(kind.table, kind.columns), lineup)] as const] : [],
  );

  test.each(formulas)("%s is within what a cell takes", (_column, formula) => {
    expect(formula.length).toBeLessThanOrEqual(8192);
    let depth = 0;
    let deepest = 0;
    for (const sign of formula.replace(/"[^"]*"/g, "")) {
      if (sign === "(") depth++;
      if (sign === ")") depth--;
      deepest = Math.max(deepest, depth);
    }
    expect(depth).toBe(0);
    expect(deepest).toBeLessThanOrEqual(64);
  });
});
