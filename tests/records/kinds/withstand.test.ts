import { expect, test } from "vitest";
import type { Lineup } from "../../../src/lineup/lineup";
import type { Row } from "../../../src/records/kind";
import { withstand } from "../../../src/records/kinds/withstand";
import { NETA } from "../../published/withstand";
import { longLineup, sampleLineup } from "../../support/lineups";
import { rowOf, workingOf } from "../../support/rowOf";

/** 12 kV on basis NETA: 27 kV AC on site; one minute. */
const lineup = longLineup(1);
const phase = (entries: Row, of: Lineup = lineup) =>
  rowOf(
    withstand,
    of,
    { applied: 27, duration: 60, discharge: "No", temperature: 20, humidity: 50, ...entries },
    "Circuit",
  );

test("rows: each phase of each section's busbar and of each circuit", () => {
  const rows = withstand.rows(sampleLineup());
  expect(rows).toHaveLength((2 + 8) * 3);
  expect(rows.slice(0, 3).map(({ phase }) => phase)).toEqual(["L1", "L2", "L3"]);
});

// ANSI/NETA MTS-2019 table 100.2, metal-clad, field (read).
test.each(NETA.filter(([kV]) => kV > 1.058).map(([voltagekV, ac]) => ({ voltagekV, ac })))(
  "at $voltagekV kV: $ac kV AC on site",
  ({ voltagekV, ac }) => {
    const row = phase({ applied: ac }, { ...lineup, ratings: { ...lineup.ratings, voltagekV } });
    expect(row).toMatchObject({ basekV: ac, required: ac, result: "Pass" });
    expect(String(row.sources)).toContain("100.2");
  },
);

// A test that was too low, too short or on a wet surface proves nothing; it is no failure either.
// IEC 60060-1 (memory): within 1 % of the voltage for tests up to a minute.
test.each([
  [{ applied: 27 }, "Pass"],
  [{ applied: 26.74 }, "Pass"],
  [{ applied: 26.72 }, "Inconclusive"],
  [{ duration: 59 }, "Inconclusive"],
  [{ duration: null }, "Inconclusive"],
  [{ applied: null }, "Missing"],
  [{ discharge: null }, "Inconclusive"],
  [{ discharge: "Yes" }, "Fail"],
  [{ applied: null, discharge: "Yes" }, "Fail"],
  [{ surface: 15 }, "Pass"],
  // The dew point of 20 °C and 50 % is 9.3 °C (Magnus formula).
  [{ surface: 9 }, "Inconclusive"],
] as const)("%j: %s", (entries, verdict) => {
  expect(phase(entries).result).toBe(verdict);
});

test("where the project corrects for the air, the required voltage follows it, worked out in the row", () => {
  const corrected = longLineup(1, { withstand: { ...lineup.withstand, gapM: 0.2 } });
  const row = phase({ pressure: 101.3 }, corrected);
  const factor = Number(row.airFactor);
  expect(factor).toBeGreaterThan(0.9);
  expect(factor).toBeLessThan(1.1);
  expect(row.required).toBeCloseTo(27 * factor, 9);
  expect(workingOf(withstand, "required", row, corrected)).toContain("27 kV ×");
  expect(phase({ pressure: null }, corrected).result).toBe("Inconclusive");
});

test("a project's own voltage and duration stand before the standard's, each with its document", () => {
  const own = longLineup(1, {
    criteria: [
      { from: "project", quantity: "withstand kV", value: 24, document: "INV-9 (invented)" },
      {
        from: "project",
        quantity: "withstand duration s",
        value: 300,
        document: "INV-9 (invented)",
      },
    ],
  });
  expect(phase({ applied: 24, duration: 300 }, own)).toMatchObject({
    required: 24,
    result: "Pass",
  });
  expect(phase({ applied: 24, duration: 60 }, own).result).toBe("Inconclusive");
  expect(String(phase({}, own).sources)).toContain("INV-9");
});
