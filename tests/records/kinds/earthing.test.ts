import { expect, test } from "vitest";
import type { Lineup } from "../../../src/lineup/lineup";
import { evaluate } from "../../../src/records/evaluate";
import type { Row } from "../../../src/records/kind";
import { earthing } from "../../../src/records/kinds/earthing";
import { longLineup, sampleLineup } from "../../support/lineups";

const lineup = longLineup(1, { basis: "IEC" });
const row = (entries: Row, of = lineup) =>
  evaluate(earthing, [{ object: "=K0001", part: "Door", ...entries }], of)[0];

test("rows: enclosure and door of every panel, the frame where there is a breaker, each section's earth bar", () => {
  const rows = earthing.rows(sampleLineup());
  const of = (object: string) =>
    rows.filter((row) => row.object === object).map(({ part }) => part);
  expect(of("=H01")).toEqual(["Enclosure", "Door", "Breaker Q0 frame"]);
  expect(of("=H04")).toEqual(["Enclosure", "Door"]);
  expect(of("Bus B")).toEqual(["Earth bar"]);
  expect(rows).toHaveLength(10 * 2 + 8 + 2);
});

// 3 V at 30 A (IEC 62271-200, memory); R = U / I.
test.each([
  [30, 2.9, "Pass"],
  [30, 3, "Pass"],
  [30, 3.1, "Fail"],
  [100, 9.9, "Pass"],
  [30, "150 mV", "Pass"],
  [10, 0.05, "Inconclusive"],
  [null, 0.05, "Inconclusive"],
  [30, "< 1 mV", "Inconclusive"],
  [30, -0.1, "Inconclusive"],
  [30, null, "Missing"],
] as const)("%s A, drop %s: %s", (testCurrent, reading, verdict) => {
  expect(row({ testCurrent, reading })?.result).toBe(verdict);
});

test("the project's own maximum comes first, and is named", () => {
  const own = longLineup(1, {
    criteria: [
      { from: "project", quantity: "earthing resistance mΩ", value: 1, document: "invented" },
    ],
  });
  const judged = row({ testCurrent: 30, reading: 0.06 }, own);
  expect([judged?.resistance, judged?.maximum, judged?.result]).toEqual([2, 1, "Fail"]);
  expect(judged?.sources).toContain("maximum: invented (project)");
  expect(String(row({})?.sources)).toContain("3 V at 30 A: IEC 62271-200:2021");
});

// ANSI/NETA ATS, grounding systems (memory): point to point above 0.5 Ω is looked into, no current prescribed.
test.each([
  [10, "4 mV", "Pass"],
  [10, 4.9, "Pass"],
  [10, 5.1, "Fail"],
] as const)("NETA: %s A, drop %s: %s", (testCurrent, reading, verdict) => {
  expect(row({ testCurrent, reading }, longLineup(1))?.result).toBe(verdict);
});

test("an earth bar is judged by the project's value, else compared with the other bars; never by 3 V at 30 A", () => {
  const bars = (readings: readonly number[], of: Lineup) =>
    evaluate(
      earthing,
      readings.map((reading, at) => ({
        object: `Section ${at + 1}`,
        part: "Earth bar",
        testCurrent: 100,
        reading,
      })),
      of,
    ).map(({ result }) => result);
  const twenty = longLineup(20, { basis: "IEC" });
  expect(bars([0.008], twenty)).toEqual(["Inconclusive"]);
  expect(bars([0.008, 0.011], twenty)).toEqual(["Pass", "Pass"]);
  expect(bars([0.008, 0.032], twenty)).toEqual(["Pass", "Inconclusive"]);
  const own = longLineup(20, {
    criteria: [
      { from: "project", quantity: "ground bus resistance µΩ", value: 200, document: "invented" },
    ],
  });
  expect(bars([0.008, 0.032], own)).toEqual(["Pass", "Fail"]);
});

// Common practice, no source: a door that resists many times what the other doors do has a bad strap, whatever the standard lets pass.
test.each([
  ["NETA", [0.2, 0.24, 4], ["Pass", "Pass", "Inconclusive"]],
  ["NETA", [0.2, 0.24, 0.9], ["Pass", "Pass", "Pass"]],
  ["NETA", [0.02, 0.08, 0.09], ["Pass", "Pass", "Pass"]],
  ["IEC", [0.06, 0.05, 2.4], ["Pass", "Pass", "Inconclusive"]],
  ["IEC", [2.4], ["Pass"]],
  ["IEC", [0.06, 0.05, 3.3], ["Pass", "Pass", "Fail"]],
] as const)("%s: doors that drop %j V at 10 or 30 A: %j", (basis, readings, verdicts) => {
  const doors = readings.map((reading, at) => ({
    object: `=K000${at + 1}`,
    part: "Door",
    testCurrent: basis === "IEC" ? 30 : 10,
    reading,
  }));
  const judged = evaluate(earthing, doors, longLineup(3, { basis }));
  expect(judged.map(({ result }) => result)).toEqual(verdicts);
});

test("the project's own maximum of a door decides by itself, without its like", () => {
  const own = longLineup(2, {
    criteria: [
      { from: "project", quantity: "ground continuity mΩ", value: 450, document: "invented" },
    ],
  });
  const doors = [0.2, 4].map((reading, at) => ({
    object: `=K000${at + 1}`,
    part: "Door",
    testCurrent: 10,
    reading,
  }));
  expect(evaluate(earthing, doors, own).map(({ result }) => result)).toEqual(["Pass", "Pass"]);
});
