import { expect, it } from "vitest";
import { type CableWave, cableTests, cableVoltages } from "../../src/standards/cableTest";
import type { Chosen } from "../../src/standards/editions";
import { english } from "../support/inWords";

const kV = (ratedkV: number, chosen: Chosen, wave: CableWave, u0kV?: number) => {
  const found = cableTests({ ratedkV, u0kV }, wave, chosen);
  return found.ok ? found.value.map((test) => test.kV.value) : found.kind;
};
const IEC: Chosen = { basis: "IEC" };
const NETA: Chosen = { basis: "NETA" };

// IEC 60502-2:2014 (memory): AC U0 for 24 h or U for 5 min, DC 4 U0, 0.1 Hz 3 U0, 15 min; a cable is known
// by its system's highest or by its nominal voltage, national ones by their own U0 (BS 6622: 6.35/11 kV).
it.each([
  [7.2, [3.6, 6], 14.4, 10.8],
  [10, [6, 10], 24, 18],
  [12, [6, 10], 24, 18],
  [11, [6.35, 11], 25.4, 19.05],
  [20, [12, 20], 48, 36],
  [22, [12.7, 22], 50.8, 38.1],
  [36, [18, 30], 72, 54],
  [33, [19, 33], 76, 57],
] as const)("IEC, %d kV: AC %j kV, DC %d kV, VLF %d kV", (rated, ac, dc, vlf) => {
  expect(kV(rated, IEC, "AC")).toEqual(ac);
  expect(kV(rated, IEC, "DC")).toEqual([dc]);
  expect(kV(rated, IEC, "VLF")).toEqual([vlf]);
});

it("goes by the cable's own U0 where it is known", () => {
  expect(kV(12, IEC, "DC", 6.35)).toEqual([25.4]);
  expect(kV(13.8, IEC, "AC", 8)).toEqual([8, 13.8]);
});

it("asks for U0 where no table has it", () => {
  const found = cableVoltages({ ratedkV: 13.8 });
  expect(!found.ok && found.say(english)).toContain("u0kV");
});

it("the edition of 2005 has no test at very low frequency", () => {
  const older: Chosen = { basis: "IEC", editions: { "IEC 60502-2": "2005" } };
  expect(kV(12, older, "VLF")).toBe("none");
  expect(kV(12, older, "DC")).toEqual([24]);
});

// IEEE 400.2-2013, table 3, sinusoidal (read in a test-set maker's reprint): kV, acceptance and maintenance rms, peak of acceptance.
const VLF = [
  [5, 10, 7, 14],
  [8, 13, 10, 18],
  [15, 21, 16, 30],
  [20, 26, 20, 37],
  [25, 32, 24, 45],
  [28, 36, 27, 51],
  [30, 38, 29, 54],
  [35, 44, 33, 62],
  [46, 57, 43, 81],
] as const;
it.each(VLF)(
  "NETA, %d kV: acceptance %d kV, maintenance %d kV",
  (rated, acceptance, maintenance) => {
    expect(kV(rated, NETA, "VLF")).toEqual([acceptance]);
    expect(kV(rated, { ...NETA, purpose: "maintenance" }, "VLF")).toEqual([maintenance]);
  },
);
// The same table prints peak values beside the rms ones. A sine has √2.
it.each(VLF)("%d kV: the peak of the sine", (_rated, acceptance, _maintenance, peak) => {
  expect(Math.abs(acceptance * Math.SQRT2 - peak)).toBeLessThan(0.51);
});

it.each([
  [15, NETA, "AC", "none"],
  [40.5, IEC, "AC", "none"],
  [12, NETA, "VLF", "none"],
  [34.5, NETA, "VLF", "none"],
  [69, NETA, "VLF", "none"],
  [0.6, IEC, "AC", "none"],
  [0, IEC, "AC", "range"],
  [-12, NETA, "VLF", "range"],
] as const)("%d kV, %o, %s: %s", (rated, chosen, wave, kind) => {
  expect(kV(rated, chosen, wave)).toBe(kind);
});
