import { expect, it } from "vitest";
import { cableTest } from "../../src/standards/cableTest";

const kV = (...args: Parameters<typeof cableTest>) => {
  const found = cableTest(...args);
  return found.ok ? found.value.value : found.kind;
};

// IEC 60502-2 (memory): AC at U0, DC at 4 U0; a cable is known by its system's highest or nominal voltage.
it.each([
  [7.2, 3.6, 14.4],
  [10, 6, 24],
  [12, 6, 24],
  [20, 12, 48],
  [36, 18, 72],
])("IEC, %d kV: AC %d kV, DC %d kV", (rated, ac, dc) => {
  expect(kV(rated, "IEC", "AC")).toBe(ac);
  expect(kV(rated, "IEC", "DC")).toBe(dc);
});

// IEEE 400.2-2013, table 3, acceptance, rms (read; 25 kV from a damaged layout).
it.each([
  [5, 10],
  [8, 13],
  [15, 21],
  [25, 32],
  [35, 44],
])("NETA, %d kV: very low frequency %d kV", (rated, vlf) => {
  expect(kV(rated, "NETA", "VLF")).toBe(vlf);
});

// The same table (read) prints peak values beside the rms ones: 14, 18, 30, 45, 62. A sine has √2.
it.each([
  [5, 14],
  [8, 18],
  [15, 30],
  [25, 45],
  [35, 62],
])("%d kV: the peak of the sine is %d kV", (rated, peak) => {
  expect(Math.abs(Number(kV(rated, "NETA", "VLF")) * Math.SQRT2 - peak)).toBeLessThan(0.51);
});

it.each([
  [12, "IEC", "VLF", "none"],
  [15, "NETA", "AC", "none"],
  [40.5, "IEC", "AC", "none"],
  [46, "NETA", "VLF", "none"],
  [0.6, "IEC", "AC", "none"],
  [0, "IEC", "AC", "range"],
  [-12, "NETA", "VLF", "range"],
] as const)("%d kV, %s, %s: %s", (rated, basis, wave, kind) => {
  expect(kV(rated, basis, wave)).toBe(kind);
});
