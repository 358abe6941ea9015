import fc from "fast-check";
import { expect, test } from "vitest";
import type { Lineup } from "../../../src/lineup/lineup";
import type { Row } from "../../../src/records/kind";
import { withstand } from "../../../src/records/kinds/withstand";
import { NETA } from "../../published/withstand";
import { longLineup, sampleLineup } from "../../support/lineups";
import { rowOf, workingOf } from "../../support/rowOf";

/** 15 kV on basis NETA: 27 kV AC on site; one minute. */
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

/** IEC gear of 12 kV whose standard site value is 22.4 kV (80 % of 28 kV). */
const iec = (changes: Partial<Lineup["ratings"]> = {}, test: Partial<Lineup["withstand"]> = {}) => {
  const lineup = longLineup(1, { basis: "IEC" });
  return {
    ...lineup,
    ratings: { ...lineup.ratings, ...changes },
    withstand: { ...lineup.withstand, ...test },
  };
};

// Plate first (common practice): 80 % of its level for IEC, 75 % for NETA; the table cross-checks.
test.each([
  ["IEC", 12, 28, 22.4, "the table has 28 kV as well"],
  ["IEC", 12, 42, 33.6, "the plate decides"],
  ["IEC", 13.8, 38, 30.4, "rating plate"],
  ["NETA", 15.5, 50, 37.5, "rating plate"],
] as const)(
  "%s, %d kV with %d kV on the plate: %d kV on site",
  (basis, voltagekV, plate, site, words) => {
    const base = longLineup(1, { basis });
    const of = { ...base, ratings: { ...base.ratings, voltagekV, powerFrequencykV: plate } };
    const row = phase({ applied: site }, of);
    expect(row).toMatchObject({ basekV: site, mostkV: plate, result: "Pass" });
    expect(String(row.sources)).toContain(words);
  },
);

test("above the rated level nobody signs before the maker is asked", () => {
  expect(phase({ applied: 22.4 }, iec()).result).toBe("Pass");
  expect(phase({ applied: 28 }, iec()).result).toBe("Pass");
  expect(phase({ applied: 30.4 }, iec())).toMatchObject({ mostkV: 28, result: "Inconclusive" });
  expect(
    phase({ applied: 27 }, { ...lineup, ratings: { ...lineup.ratings, voltagekV: 4.76 } }).result,
  ).toBe("Inconclusive");
});

test("a rated voltage that no table has gives no level: nothing passes without the plate", () => {
  for (const applied of [14, 27, 30.4, 45])
    expect(phase({ applied }, iec({ voltagekV: 13.8 }))).toMatchObject({
      basekV: null,
      result: "Inconclusive",
    });
});

// IEC 62271-1 (memory; verdicts are signed on it): up to 52 kV m = w = 1 below 11 g/m³ of water, w = 0 above,
// and with internal insulation in parallel the factor counts from 0.95 to 1.05 alone.
test("the air of the day for gear up to 52 kV", () => {
  const dry = { pressure: 101.3, humidity: 45, surface: 20 };
  const row = phase({ ...dry, applied: 21.6 }, iec({}, { gapM: 0.12 }));
  expect(row.airFactor).toBeCloseTo(0.961, 3);
  expect(row.result).toBe("Pass");
  // 28 °C and 70 % hold about 19 g/m³: humidity does not count, and refuses nothing.
  const moist = { temperature: 28, pressure: 101.3, humidity: 70, surface: 28 };
  expect(phase({ ...moist, applied: 22.4 }, iec({}, { gapM: 0.12 }))).toMatchObject({
    result: "Pass",
  });
  // At 85 kPa the factor is about 0.83.
  const thin = { temperature: 24, pressure: 85, humidity: 35, surface: 24, applied: 18.4 };
  expect(phase(thin, iec({}, { gapM: 0.12 }))).toMatchObject({
    airFactor: 1,
    result: "Inconclusive",
  });
  const air = iec({}, { gapM: 0.12, parallelInternal: false });
  expect(phase(thin, air).airFactor).toBeLessThan(0.83);
});

test("a surface that nobody measured is none of a dry test where the air is near saturation", () => {
  expect(phase({ humidity: 95 }).result).toBe("Inconclusive");
  expect(phase({ humidity: 80 }).result).toBe("Inconclusive");
  expect(phase({ humidity: 80, surface: 20 }).result).toBe("Pass");
  expect(phase({ humidity: 50 })).toMatchObject({ dewLeast: "n/a", result: "Pass" });
});

test("no missing condition gives a pass", () => {
  const whole = { temperature: 20, pressure: 101.3, humidity: 50, surface: 20 };
  const conditions = ["temperature", "humidity", "applied", "duration", "discharge"];
  fc.assert(
    fc.property(
      fc.subarray(conditions, { minLength: 1 }),
      fc.boolean(),
      fc.double({ min: 20, max: 60, noNaN: true }),
      (missing, iecBasis, applied) => {
        const without = Object.fromEntries(missing.map((id) => [id, null]));
        const of = iecBasis ? iec() : lineup;
        expect(phase({ ...whole, applied, ...without }, of).result).not.toBe("Pass");
      },
    ),
  );
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
