import { expect, test } from "vitest";
import type { OwnCriterion } from "../../src/lineup/lineup";
import { ownCriterion } from "../../src/lineup/ownCriterion";
import { longLineup } from "../support/lineups";

const quantity = "insulation minimum MΩ";
const one = (from: "maker" | "project", value: number, applies?: string[]): OwnCriterion => ({
  from,
  quantity,
  value,
  document: "invented",
  ...(applies ? { applies } : {}),
});

test.each([
  [[], undefined],
  [[one("project", 1)], 1],
  [[one("project", 1), one("maker", 2)], 2],
  [[one("project", 1), one("project", 3, ["=K0001"])], 3],
  [[one("maker", 2), one("project", 3, ["=K0001"])], 2],
  [[one("project", 3, ["=K0002"])], undefined],
  [[one("project", 4, ["Section 1"])], 4],
])("maker before project, one for the panel before one for all: %#", (criteria, value) => {
  const lineup = longLineup(2, { criteria });
  expect(ownCriterion(lineup, quantity, "=K0001")?.value).toBe(value);
});

test("a criterion for another quantity is not taken", () => {
  const lineup = longLineup(1, { criteria: [one("maker", 2)] });
  expect(ownCriterion(lineup, "withstand kV", "=K0001")).toBeUndefined();
});
