import { expect, test } from "vitest";
import { evaluate } from "../../../src/records/evaluate";
import type { Row } from "../../../src/records/kind";
import { contact } from "../../../src/records/kinds/contact";
import { longLineup, sampleLineup } from "../../support/lineups";
import { rowOf, workingOf } from "../../support/rowOf";

/** Breakers of 50 µΩ at most, tests at 50 A or more (basis IEC) or 100 A (NETA). */
const lineup = longLineup(2, { basis: "IEC" });
const pole = (entries: Row) =>
  rowOf(contact, lineup, { testCurrent: 100, temperature: 20, ...entries }, "Breaker Q0");

test("rows: three poles of each breaker, three phases of each joint between neighbours", () => {
  const rows = contact.rows(sampleLineup());
  const breakers = rows.filter(({ part }) => part === "Breaker Q0");
  expect(breakers).toHaveLength(8 * 3);
  expect(breakers.slice(0, 3).map(({ pole }) => pole)).toEqual(["L1", "L2", "L3"]);
  expect(rows.filter(({ part }) => String(part).startsWith("Joint to")).length % 3).toBe(0);
});

// IEC 60028 (memory): R20 of copper = R · (234.5 + 20) / (234.5 + θ).
test.each([
  [20, 42],
  [0, (42 * 254.5) / 234.5],
  [45, (42 * 254.5) / 279.5],
])("42 µΩ at %s °C is %s µΩ at 20 °C", (temperature, expected) => {
  const row = pole({ reading: 42, temperature });
  expect(row.corrected).toBeCloseTo(expected, 9);
  expect(workingOf(contact, "corrected", row, lineup)).toContain("× (234.5 + 20) ÷ (234.5 +");
});

test.each([
  [{ reading: 50 }, "Pass"],
  [{ reading: 50.1 }, "Fail"],
  [{ reading: "0.05 mΩ" }, "Pass"],
  [{ reading: "< 60" }, "Inconclusive"],
  [{ reading: null }, "Missing"],
  [{ reading: 40, temperature: null }, "Inconclusive"],
  [{ reading: 40, testCurrent: null }, "Inconclusive"],
  // IEC 62271-1, 7.4.4 (memory): any current from 50 A to the rated one.
  [{ reading: 40, testCurrent: 50 }, "Pass"],
  [{ reading: 40, testCurrent: 49 }, "Inconclusive"],
  [{ reading: "tight" }, "Inconclusive"],
  // Milliohms typed in a column of microohms.
  [{ reading: 0.038 }, "Inconclusive"],
] as const)("%j against 50 µΩ of the maker's: %s", (entries, verdict) => {
  expect(pole(entries).result).toBe(verdict);
});

test("poles are compared among their own breaker's; what stands out is no failure by itself", () => {
  const rows = contact
    .rows(lineup)
    .filter(({ part }) => part === "Breaker Q0")
    .map((row, at) => ({
      ...row,
      testCurrent: 100,
      temperature: 20,
      reading: [20, 25, 32][at % 3],
    }));
  const computed = evaluate(contact, rows as Row[], lineup);
  expect(computed.map(({ spread }) => Number(spread).toFixed(2))).toEqual([
    "0.00",
    "0.25",
    "0.60",
    "0.00",
    "0.25",
    "0.60",
  ]);
  expect(computed.map(({ result }) => result)).toEqual(Array(6).fill("Pass"));
});

// NETA (bolted connections, memory) and common practice: more than 50 % above the lowest of similar joints is looked into.
test("a joint that neither maker nor project judges is compared with its like; one alone is not judged", () => {
  const joint = { testCurrent: 100, temperature: 20, reading: 8 };
  const row = rowOf(contact, lineup, joint, "Joint to =K0002");
  expect(row).toMatchObject({
    result: "Inconclusive",
    sources: expect.stringContaining("none given: type the maker's value here"),
  });
  expect(rowOf(contact, lineup, { ...joint, maximum: 10 }, "Joint to =K0002").result).toBe("Pass");
  const joints = contact
    .rows(lineup)
    .filter(({ part }) => String(part).startsWith("Joint"))
    .map((planned, at) => ({ ...planned, ...joint, reading: [8, 9, 12.1][at] ?? null }));
  expect(evaluate(contact, joints as Row[], lineup).map(({ result }) => result)).toEqual([
    "Pass",
    "Pass",
    "Inconclusive",
  ]);
});

test("poles without a maker's value: compared with each other in American practice, not judged under IEC", () => {
  const judged = (basis: "IEC" | "NETA") => {
    const of = longLineup(1, { basis });
    const panels = of.panels.map(({ breaker, ...panel }) => ({
      ...panel,
      ...(breaker && { breaker: { ...breaker, contactLimit: undefined } }),
    }));
    const bare = { ...of, panels };
    const rows = contact
      .rows(bare)
      .map((planned, at) => ({ ...planned, testCurrent: 100, temperature: 20, reading: 30 + at }));
    return evaluate(contact, rows, bare).map(({ result }) => result);
  };
  expect(judged("NETA")).toEqual(["Pass", "Pass", "Pass"]);
  expect(judged("IEC")).toEqual(["Inconclusive", "Inconclusive", "Inconclusive"]);
});
