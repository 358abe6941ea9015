import { describe, expect, test } from "vitest";
import type { Row } from "../../../src/records/kind";
import { insulation } from "../../../src/records/kinds/insulation";
import { FACTORS, MINIMUM } from "../../published/insulation";
import { longLineup, sampleLineup } from "../../support/lineups";
import { rowOf, workingOf } from "../../support/rowOf";

const neta = longLineup(1, { insulation: { correction: "solid", baseC: 20 } });
const circuit = (entries: Row, lineup = neta) =>
  rowOf(insulation, lineup, { testVoltage: 5000, temperature: 20, ...entries }, "Circuit");

test("rows: each section to earth and between phases, each circuit, each open pole; before and after", () => {
  const rows = insulation.rows(sampleLineup());
  const sections = 2;
  const breakers = 8;
  expect(rows).toHaveLength(2 * (sections * 6 + breakers * 6));
  expect(new Set(rows.map(({ stage }) => stage))).toEqual(new Set(["before", "after"]));
  expect(new Set(rows.map(({ combination }) => combination))).toEqual(
    new Set(["L1-E", "L2-E", "L3-E", "L1-L2", "L2-L3", "L3-L1", "L1 open", "L2 open", "L3 open"]),
  );
});

// ANSI/NETA table 100.14, solid insulation (read).
test.each(FACTORS.filter(([celsius]) => celsius >= 0 && celsius <= 60))(
  "1000 MΩ read at %s °C",
  (temperature, _oil, solid) => {
    const row = circuit({ reading: 1000, temperature });
    expect(row.corrected).toBeCloseTo(1000 * solid, 6);
    expect(workingOf(insulation, "corrected", row, neta)).toContain(`× ${solid} (solid`);
  },
);

describe("the least acceptable value", () => {
  // ANSI/NETA table 100.1 (read).
  const published = MINIMUM.filter(([kV]) => kV >= 2.5 && kV <= 34.5);
  test.each(published)("at %s kV: %s V, %s MΩ", (voltagekV, volts, megohms) => {
    const lineup = { ...neta, ratings: { ...neta.ratings, voltagekV } };
    const at = (reading: Row[string], testVoltage = volts) =>
      circuit({ reading, testVoltage }, lineup);
    expect(at(megohms)).toMatchObject({
      testVoltageLeast: volts,
      minimum: megohms,
      result: "Pass",
    });
    expect(at(megohms * 0.999).result).toBe("Fail");
    expect(at(megohms, volts - 1).result).toBe("Inconclusive");
  });
});

// 12 kV: the table's row for 15 kV, 5000 MΩ.
test.each([
  [{ reading: "5.2 GΩ" }, "Pass"],
  [{ reading: "> 2 TΩ" }, "Pass"],
  [{ reading: "> 2000" }, "Inconclusive"],
  [{ reading: "OL" }, "Inconclusive"],
  [{ reading: null }, "Missing"],
  [{ reading: 9000, temperature: null }, "Inconclusive"],
  [{ reading: 9000, testVoltage: null }, "Inconclusive"],
  // 40 °C doubles it and a half: 2000 MΩ come to 5000 MΩ.
  [{ reading: 2000, temperature: 40 }, "Pass"],
  [{ reading: 1999, temperature: 40 }, "Fail"],
] as const)("%j: %s", (entries, verdict) => {
  expect(circuit(entries).result).toBe(verdict);
});

test("where the project corrects nothing, a reading counts as read and needs no temperature", () => {
  const plain = longLineup(1, { insulation: { correction: "none", baseC: 20 } });
  const row = circuit({ reading: 6000, temperature: null }, plain);
  expect(row).toMatchObject({ corrected: 6000, result: "Pass" });
  expect(workingOf(insulation, "corrected", row, plain)).toBe("6000 MΩ as read, not corrected");
});

test("absorption ratio and polarization index inform, and accept nothing", () => {
  const row = circuit({ r30s: 4000, reading: 5000, r10min: 4500 });
  expect(row).toMatchObject({ absorption: 1.25, polarization: 0.9, result: "Pass" });
  // IEEE 43-2013 (memory): above 5000 MΩ after one minute the index means nothing.
  expect(String(circuit({ reading: 6000, r10min: 5400 }).polarization)).toContain("IEEE 43-2013");
});
