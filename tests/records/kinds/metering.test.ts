import { expect, test } from "vitest";
import { evaluate } from "../../../src/records/evaluate";
import type { Row } from "../../../src/records/kind";
import { metering } from "../../../src/records/kinds/metering";
import { equipped, longLineup } from "../../support/lineups";

// The invented meter: full scale 600 A, ±1.5 % of full scale, at 25, 50 and 100 %.
const lineup = equipped(longLineup(1));
const judged = (entries: Row, point = "50 %") =>
  evaluate(
    metering,
    metering.rows(lineup).map((row) => ({ ...row, ...entries })),
    lineup,
  ).find((row) => row.point === point) as Row;

test("a row for each point", () => {
  expect(metering.rows(lineup).map(({ part, point }) => `${part} ${point}`)).toEqual([
    "P1 25 %",
    "P1 50 %",
    "P1 100 %",
  ]);
});

test.each([
  [300, 309, 1.5, "Pass"],
  [300, 291, -1.5, "Pass"],
  [300, 310, 10 / 6, "Fail"],
  // What is applied lies far from the point: it tests another.
  [150, 150, 0, "Inconclusive"],
])("%d A applied, %d A shown: error %d %%, %s", (reference, shown, error, result) => {
  const row = judged({ reference, shown });
  expect(row.error).toBeCloseTo(error, 9);
  expect(row.result).toBe(result);
});

test("what is no number is not judged, what is not there is missing", () => {
  expect(judged({ reference: 300, shown: "302 A" }).result).toBe("Pass");
  expect(judged({ reference: 300, shown: "302 V" }).result).toBe("Inconclusive");
  expect(judged({ reference: 300, shown: "> 302 A" }).result).toBe("Inconclusive");
  expect(judged({ reference: 300, shown: null }).result).toBe("Missing");
});

test("a meter that the lineup does not list has no accuracy to judge by", () => {
  const row = { ...metering.rows(lineup)[1], part: "P9", reference: 300, shown: 300 };
  expect(evaluate(metering, [row], lineup)[0]).toMatchObject({
    errorMost: null,
    result: "Inconclusive",
  });
});

test("the error on paper", () => {
  const { working } = metering.columns.find(({ id }) => id === "error") ?? {};
  expect(working?.(judged({ reference: 300, shown: 303 }), lineup)).toBe(
    "(303 − 300) ÷ 600 × 100 = 0.5 %",
  );
});
