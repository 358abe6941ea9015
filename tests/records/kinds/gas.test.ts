import { expect, test } from "vitest";
import type { Lineup } from "../../../src/lineup/lineup";
import { evaluate } from "../../../src/records/evaluate";
import type { Row } from "../../../src/records/kind";
import { gas } from "../../../src/records/kinds/gas";
import { longLineup, sampleLineup } from "../../support/lineups";

/** One breaker by a plate in these pressures. */
const withPlate = (
  fillingMPa: number,
  alarmMPa: number,
  lockoutMPa: number,
  pressure: "gauge" | "absolute",
): Lineup => {
  const lineup = longLineup(1);
  return {
    ...lineup,
    panels: lineup.panels.map((panel) => ({
      ...panel,
      breaker: panel.breaker && {
        ...panel.breaker,
        gas: { fillingMPa, alarmMPa, lockoutMPa, pressure },
      },
    })),
  };
};
const MONITOR = { alarmAt: 0.58, lockoutAt: 0.55, tight: "No leak found" };
const judged = (lineup: Lineup, entries: Row) =>
  evaluate(
    gas,
    gas.rows(lineup).map((row) => ({ ...row, ...MONITOR, ...entries })),
    lineup,
  )[0];

test("a row for each breaker with gas; a lineup without gives none", () => {
  expect(gas.rows(sampleLineup())).toEqual([
    { object: "=H07", part: "Breaker Q0", reference: "gauge" },
  ]);
});

test("a breaker maker's published filling example (read): 0.6111 MPa by gauge at 5 °C and 93.2 kPa is 0.65 MPa at 20 °C", () => {
  const row = judged(withPlate(0.65, 0.58, 0.55, "gauge"), {
    reading: 0.6111,
    temperature: 5,
    pressure: 93.2,
  });
  // The maker rounds; the state equation meets his data within 0.2 %.
  expect(Math.abs(Number(row?.corrected) / 0.65 - 1)).toBeLessThan(0.002);
  expect(row?.result).toBe("Pass");
});

const plate = withPlate(0.65, 0.58, 0.55, "gauge");
const AT_20 = { temperature: 20, pressure: 101.3 };
// 2 % of the absolute pressure below filling, 5 % above, for gauge and thermometer: common practice.
test.each([
  [{ reading: 0.64 }, "Pass"],
  [{ reading: "6.5 bar" }, "Pass"],
  [{ reading: 0.637 }, "Pass"],
  [{ reading: 0.63 }, "Fail"],
  [{ reading: 0.68 }, "Pass"],
  [{ reading: 0.75 }, "Fail"],
  [{ reading: 0.5 }, "Fail"],
  [{ reading: 0.65, pressure: null }, "Inconclusive"],
  [{ reading: 0.65, temperature: null }, "Inconclusive"],
  [{ reading: "> 0.6 MPa" }, "Inconclusive"],
  [{ reading: null }, "Missing"],
  // The contacts within 2 % of the absolute pressure from the plate's 0.58 and 0.55 MPa: common practice.
  [{ reading: 0.65, alarmAt: 0.57 }, "Pass"],
  [{ reading: 0.65, alarmAt: 0.565 }, "Fail"],
  [{ reading: 0.65, alarmAt: 0.6 }, "Fail"],
  [{ reading: 0.65, lockoutAt: 0.53 }, "Fail"],
  [{ reading: 0.65, lockoutAt: null }, "Inconclusive"],
  [{ reading: 0.65, tight: "Leak found" }, "Fail"],
  // 0.5 % a year (IEC 62271-1, memory) decides nothing until somebody confirms it.
  [{ reading: 0.65, leak: 0.5 }, "Inconclusive"],
  [{ reading: 0.65, leak: 0.6 }, "Inconclusive"],
] as const)("%o: %s", (entries, verdict) => {
  expect(judged(plate, { ...AT_20, ...entries })?.result).toBe(verdict);
});

test("a criterion from memory decides once the lineup says who confirmed it", () => {
  const criterion =
    "IEC 62271-1:2017, tightness, standardized leakage rates of closed pressure systems";
  const leaks = (of: Lineup, leak: number) => judged(of, { ...AT_20, reading: 0.65, leak });
  expect(String(leaks(plate, 0.5)?.sources)).toContain(`confirm 0.5 against ${criterion}`);
  const confirmed = { ...plate, confirmed: [{ criterion, by: "A. Engineer (invented)" }] };
  expect(leaks(confirmed, 0.5)?.result).toBe("Pass");
  expect(leaks(confirmed, 0.6)?.result).toBe("Fail");
  expect(String(leaks(confirmed, 0.5)?.sources)).toContain("confirmed: A. Engineer");
});

/** The same plate with more on it. */
const plateWith = (more: Partial<NonNullable<Lineup["panels"][number]["breaker"]>["gas"]>) => ({
  ...plate,
  panels: plate.panels.map((panel) => ({
    ...panel,
    breaker: panel.breaker && {
      ...panel.breaker,
      gas: panel.breaker.gas && { ...panel.breaker.gas, ...more },
    },
  })),
});

test("the plate's or monitor's own tolerance stands before practice, and its maximum", () => {
  const at = (of: Lineup, reading: number) => judged(of, { ...AT_20, reading })?.result;
  expect(at(plateWith({ tolerancekPa: 5 }), 0.646)).toBe("Pass");
  expect(at(plateWith({ tolerancekPa: 5 }), 0.644)).toBe("Fail");
  // A monitor of class 2.5 over 0.8 MPa: 20 kPa.
  expect(at(plateWith({ monitorClass: 2.5, monitorSpanMPa: 0.8 }), 0.631)).toBe("Pass");
  expect(at(plateWith({ maximumMPa: 0.66 }), 0.665)).toBe("Fail");
});

// A share of a gauge pressure would be nothing at gear of 0.03 to 0.05 MPa: 2 % of 0.05 MPa is 1 kPa.
test("low-pressure gear is judged by the absolute pressure", () => {
  const low = withPlate(0.05, 0.03, 0.02, "gauge");
  const contacts = { alarmAt: 0.03, lockoutAt: 0.02 };
  const at = (reading: number) => judged(low, { ...AT_20, ...contacts, reading })?.result;
  expect([0.0475, 0.05, 0.056].map(at)).toEqual(["Pass", "Pass", "Pass"]);
  expect([0.045, 0.06].map(at)).toEqual(["Fail", "Fail"]);
});

test("a compartment sealed for life has no contacts to be tried", () => {
  const sealed = plateWith({ sealed: true, alarmMPa: undefined, lockoutMPa: undefined });
  const entries = { ...AT_20, reading: 0.65, alarmAt: null, lockoutAt: null };
  expect(judged(sealed, entries)).toMatchObject({ alarm: "n/a", lockout: "n/a", result: "Pass" });
  expect(judged(sealed, { ...entries, reading: 0.6 })?.result).toBe("Fail");
});

test("near saturation the pressure says nothing of the filling", () => {
  const cold = { temperature: -35, pressure: 101.3 };
  for (const reading of [0.3, 0.31])
    expect(judged(plate, { ...cold, reading })?.result).toBe("Inconclusive");
});

test("an absolute reading needs no barometer", () => {
  const absolute = withPlate(0.65, 0.58, 0.55, "absolute");
  expect(judged(absolute, { reading: 0.65, temperature: 20 })?.result).toBe("Pass");
  const barometer = gas.columns.find(({ id }) => id === "pressure");
  expect(barometer?.needed?.(gas.rows(absolute)[0] ?? {}, absolute)).toBe(false);
  expect(barometer?.needed?.(gas.rows(plate)[0] ?? {}, plate)).toBe(true);
});
