import { expect, test } from "vitest";
import { evaluate } from "../../../src/records/evaluate";
import type { Row } from "../../../src/records/kind";
import { controlWiring } from "../../../src/records/kinds/controlWiring";
import { longLineup, sampleLineup } from "../../support/lineups";

const iec = longLineup(1, { basis: "IEC" });
const neta = longLineup(1);
const GOOD = {
  continuity: "OK",
  ferrules: "OK",
  testVoltage: 500,
  reading: 200,
  applied: 1,
  duration: 1,
  discharge: "No",
};
const row = (entries: Row, of = iec) =>
  evaluate(controlWiring, [{ object: "=K0001", part: "Closing", ratedkV: 12, ...entries }], of)[0];

test("circuits by what stands in the panel", () => {
  const lineup = sampleLineup();
  const [panel] = lineup.panels;
  if (!panel) throw new Error("no panel");
  const rows = controlWiring.rows(lineup);
  const of = (object: string) =>
    rows.filter((row) => row.object === object).map(({ part }) => part);
  expect(of("=H02").slice(0, 4)).toEqual([
    "Closing",
    "Tripping",
    "Spring charging",
    "Heating and lighting",
  ]);
  expect(of("=H04")).toEqual(["Heating and lighting", "Voltage circuits"]);
  expect(of("=H06")).toEqual(["Heating and lighting"]);
  const core = { name: "1S1-1S2", primaryA: 600, secondaryA: 1 as const, accuracy: "5P" };
  const withCore = { ...lineup, panels: [{ ...panel, currentTransformers: [core] }] };
  expect(controlWiring.rows(withCore).map(({ part }) => part)).toContain("Current circuits");
});

// 1 kV, 1 s (IEC 62271-1, memory; verdicts are signed on it); 1 MΩ at 500 V DC (IEC 60364-6, quoted).
test.each([
  [{}, "Pass"],
  [{ reading: "> 2 GΩ" }, "Pass"],
  [{ reading: 1 }, "Pass"],
  [{ reading: 0.9 }, "Fail"],
  [{ reading: "> 500 kΩ" }, "Inconclusive"],
  [{ reading: "OL" }, "Inconclusive"],
  [{ testVoltage: 250 }, "Inconclusive"],
  [{ applied: 0.95 }, "Inconclusive"],
  [{ duration: 0.5 }, "Inconclusive"],
  [{ continuity: "Not OK" }, "Fail"],
  [{ ferrules: null }, "Inconclusive"],
  [{ discharge: null }, "Inconclusive"],
  [{ discharge: "Yes" }, "Fail"],
  [{ reading: null }, "Missing"],
  [{ applied: null }, "Missing"],
] as const)("IEC, %o: %s", (entries, verdict) => {
  expect(row({ ...GOOD, ...entries })?.result).toBe(verdict);
});

// Three quarters of 1.5 kV for a minute (IEEE C37.20.2, as gear makers print it); 2 MΩ at 1000 V DC on wire rated
// 600 V, at 500 V DC on wire rated 300 V (NETA, quoted).
test("NETA", () => {
  const good = { ...GOOD, applied: 1.125, duration: 60, testVoltage: 1000 };
  expect(row(good, neta)).toMatchObject({
    required: 1.125,
    durationLeast: 60,
    minimum: 2,
    result: "Pass",
  });
  expect(row({ ...good, reading: 1.4 }, neta)?.result).toBe("Fail");
  expect(row({ ...good, testVoltage: 500 }, neta)?.result).toBe("Inconclusive");
  const wire300 = { ...neta, ratings: { ...neta.ratings, controlWireV: 300 } };
  expect(row({ ...good, testVoltage: 500 }, wire300)?.result).toBe("Pass");
  expect(row(GOOD, neta)?.result).toBe("Inconclusive");
});
