import { describe, expect, test } from "vitest";
import type { Lineup } from "../../../src/lineup/lineup";
import { evaluate } from "../../../src/records/evaluate";
import type { Row } from "../../../src/records/kind";
import { indexCurve } from "../../../src/records/kinds/indexCurve";
import { longLineup } from "../../support/lineups";

const index = (value: number, applies?: string[]): Lineup["criteria"][number] => ({
  from: "project",
  quantity: "polarization index",
  value,
  document: "invented",
  ...(applies ? { applies } : {}),
});
const asked = (...criteria: Lineup["criteria"]) => longLineup(2, { criteria });
const GOOD = { testVoltage: 5000, s30: 1000, min1: 1250, min10: 2500, temperature: 20 };
const judged = (lineup: Lineup, entries: Row) =>
  evaluate(
    indexCurve,
    indexCurve.rows(lineup).map((row) => ({ ...row, ...GOOD, ...entries })),
    lineup,
  )[0] as Row;

test("rows only where the project sets a least index or ratio", () => {
  expect(indexCurve.rows(longLineup(2))).toEqual([]);
  expect(indexCurve.rows(asked(index(1.5)))).toHaveLength(9);
  expect(indexCurve.rows(asked(index(1.5, ["=K0002"]))).map(({ object }) => object)).toEqual([
    "=K0002",
    "=K0002",
    "=K0002",
  ]);
});

test.each([
  [{}, "Pass"],
  [{ min10: 1800 }, "Fail"],
  // IEEE 43-2013 (read in quotation): not meaningful where R(1 min) exceeds 5000 MΩ.
  [{ s30: 15_000, min1: 20_000, min10: 150_000 }, "Inconclusive"],
  [{ min10: "> 5 GΩ" }, "Inconclusive"],
  [{ testVoltage: 1000 }, "Inconclusive"],
  [{ min10: null }, "Inconclusive"],
  // The ratio is not asked for, so that its reading may stay blank.
  [{ s30: null }, "Pass"],
  [{ min1: null }, "Missing"],
] as const)("least index 1.5, %o: %s", (entries, result) => {
  expect(judged(asked(index(1.5)), entries).result).toBe(result);
});

test("the ratio is judged where the project sets one, else it informs", () => {
  const ratio = { ...index(1.3), quantity: "absorption ratio" as const };
  expect(judged(asked(index(1.5)), { s30: 1250 })).toMatchObject({
    absorption: 1,
    ratioLeast: "n/a",
    result: "Pass",
  });
  expect(judged(asked(index(1.5), ratio), {})).toMatchObject({
    absorption: 1.25,
    ratioLeast: 1.3,
    result: "Fail",
  });
  expect(judged(asked(ratio), { s30: 900 })).toMatchObject({ indexLeast: "n/a", result: "Pass" });
});

test("a row that the project no longer asks for is not passed by what is not judged", () => {
  const row = indexCurve.rows(asked(index(1.5)))[0] as Row;
  expect(evaluate(indexCurve, [{ ...row, ...GOOD }], longLineup(2))[0]).toMatchObject({
    indexLeast: "n/a",
    ratioLeast: "n/a",
    result: "Inconclusive",
  });
});

test("both on paper", () => {
  const lineup = asked(index(1.5));
  const row = judged(lineup, {});
  const paper = (id: string) =>
    indexCurve.columns.find((column) => column.id === id)?.working?.(row, lineup);
  expect(paper("polarization")).toBe("2500 MΩ ÷ 1250 MΩ = 2");
  expect(paper("absorption")).toBe("1250 MΩ ÷ 1000 MΩ = 1.25");
});

describe("the one-minute reading beside the insulation record of the day", () => {
  const here: Row = { min1: 2131, testVoltage: 5000, date: 46_329 };
  const there: Row = { reading: 2140, testVoltage: 5000, date: 46_329.4 };
  const told = (row: Row, other: Row = {}) =>
    indexCurve.against?.[0]?.contradiction(
      { ...here, ...row },
      { ...there, ...other },
      longLineup(1),
    );
  test.each([
    [{ min1: 21_310 }, {}],
    [{ min1: 5000 }, {}],
    [{ min1: 900 }, {}],
    [{ min1: "21.31 GΩ" }, {}],
    [{ min1: 30_000, testVoltage: 2500 }, {}],
  ])("is another: %o", (row, other) => {
    expect(told(row, other)).toMatchObject({ column: "min1", why: "reading", other: "2140 MΩ" });
  });
  test.each([
    ["within a factor of two", { min1: 4200 }, {}],
    ["another day", { min1: 21_310 }, { date: 46_331 }],
    ["another test voltage, within ten", { min1: 15_000, testVoltage: 2500 }, {}],
    ["beyond the range", { min1: "> 200000" }, {}],
    ["no reading", { min1: null }, {}],
  ])("is no question: %s", (_name, row, other) => {
    expect(told(row, other)).toBeUndefined();
  });
});
