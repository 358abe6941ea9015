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
// 2 % below filling for gauge and thermometer: common practice.
test.each([
  [{ reading: 0.64 }, "Pass"],
  [{ reading: "6.5 bar" }, "Pass"],
  [{ reading: 0.63 }, "Fail"],
  [{ reading: 0.5 }, "Fail"],
  [{ reading: 0.65, pressure: null }, "Inconclusive"],
  [{ reading: 0.65, temperature: null }, "Inconclusive"],
  [{ reading: "> 0.6 MPa" }, "Inconclusive"],
  [{ reading: null }, "Missing"],
  // The contacts within 2 % of the plate's 0.58 and 0.55 MPa: common practice.
  [{ reading: 0.65, alarmAt: 0.57 }, "Pass"],
  [{ reading: 0.65, alarmAt: 0.565 }, "Fail"],
  [{ reading: 0.65, alarmAt: 0.6 }, "Fail"],
  [{ reading: 0.65, lockoutAt: 0.53 }, "Fail"],
  [{ reading: 0.65, lockoutAt: null }, "Inconclusive"],
  [{ reading: 0.65, tight: "Leak found" }, "Fail"],
  // 0.5 % a year (IEC 62271-1, memory).
  [{ reading: 0.65, leak: 0.5 }, "Pass"],
  [{ reading: 0.65, leak: 0.6 }, "Fail"],
] as const)("%o: %s", (entries, verdict) => {
  expect(judged(plate, { ...AT_20, ...entries })?.result).toBe(verdict);
});

test("an absolute reading needs no barometer", () => {
  const absolute = withPlate(0.65, 0.58, 0.55, "absolute");
  expect(judged(absolute, { reading: 0.65, temperature: 20 })?.result).toBe("Pass");
  const barometer = gas.columns.find(({ id }) => id === "pressure");
  expect(barometer?.needed?.(gas.rows(absolute)[0] ?? {}, absolute)).toBe(false);
  expect(barometer?.needed?.(gas.rows(plate)[0] ?? {}, plate)).toBe(true);
});
