import { expect, test } from "vitest";
import type { Lineup } from "../../../src/lineup/lineup";
import { evaluate } from "../../../src/records/evaluate";
import type { Row } from "../../../src/records/kind";
import { protection } from "../../../src/records/kinds/protection";
import { longLineup } from "../../support/lineups";

type Element = Lineup["panels"][number]["protection"][number];

const withElement = (changes: Partial<Element>): Lineup => {
  const lineup = longLineup(1);
  const element: Element = {
    relay: "F1",
    element: "51",
    pickup: 1,
    unit: "A",
    curve: "IEC standard",
    setting: 0.05,
    multiples: [2, 5],
    pickupPercent: 5,
    timePercent: 5,
    timeS: 0.04,
    ...changes,
  };
  return {
    ...lineup,
    panels: lineup.panels.map((panel) => ({ ...panel, protection: [element] })),
  };
};
const judged = (changes: Partial<Element>, point: string, entries: Row) => {
  const lineup = withElement(changes);
  return evaluate(
    protection,
    protection.rows(lineup).map((row) => ({ ...row, trips: "Yes", ...entries })),
    lineup,
  ).find((row) => row.point === point) as Row;
};

test("a row for the pick-up and one for each multiple", () => {
  expect(protection.rows(withElement({})).map(({ part, point }) => `${part} ${point}`)).toEqual([
    "F1 51 Pick-up",
    "F1 51 2 × pick-up",
    "F1 51 5 × pick-up",
  ]);
});

// Operating times published in relay makers' manuals (read).
test.each([
  ["IEC standard", 0.05, 2, 0.501],
  ["IEC standard", 0.1, 5, 0.428],
  ["IEEE very", 1, 2, 7.028],
  ["IEEE moderately", 1, 5, 1.688],
] as const)("%s at setting %d, %d times pick-up: %d s", (curve, setting, multiple, seconds) => {
  const row = judged({ curve, setting }, `${multiple} × pick-up`, { reading: seconds });
  expect(row.expected).toBeCloseTo(seconds, 3);
  expect(row).toMatchObject({ inject: multiple, inUnit: "s", result: "Pass" });
});

test.each([
  // 5 % of 0.501 s is 25 ms; the 40 ms are greater.
  ["2 × pick-up", 0.54, "Pass"],
  ["2 × pick-up", 0.545, "Fail"],
  ["Pick-up", 1.05, "Pass"],
  ["Pick-up", 1.06, "Fail"],
  ["Pick-up", "1.0 A", "Pass"],
  ["Pick-up", "1060 mA", "Fail"],
  ["Pick-up", "1.0 s", "Inconclusive"],
  ["Pick-up", null, "Missing"],
] as const)("%s, measured %s: %s", (point, reading, result) => {
  expect(judged({}, point, { reading }).result).toBe(result);
});

test("a definite time is its delay, and 5 % of 2 s is more than 40 ms", () => {
  const definite = { curve: "definite" as const, setting: 2 };
  expect(judged(definite, "5 × pick-up", { reading: 2.09 })).toMatchObject({
    expected: 2,
    errorMost: 5,
    result: "Pass",
  });
  expect(judged(definite, "5 × pick-up", { reading: 2.11 }).result).toBe("Fail");
});

test("the wrong contact or target fails whatever the time", () => {
  expect(judged({}, "Pick-up", { reading: 1, trips: "No" }).result).toBe("Fail");
  expect(judged({}, "Pick-up", { reading: 1, trips: null }).result).toBe("Inconclusive");
});

test("on paper", () => {
  const lineup = withElement({});
  const row = judged({}, "2 × pick-up", { reading: 0.52 });
  const paper = (id: string) =>
    protection.columns.find((column) => column.id === id)?.working?.(row, lineup);
  expect(paper("expected")).toBe("IEC standard at 2 times pick-up, setting 0.05 = 0.501451 s");
  expect(paper("errorMost")).toMatch(/^greater of 5 % and 0.04 s ÷ 0.501451 s × 100 = 7.97/);
  expect(paper("error")).toMatch(/^\(0.52 − 0.501451\) s ÷ 0.501451 s × 100 = 3.69/);
});
