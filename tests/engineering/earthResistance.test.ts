import { expect, it } from "vitest";
import { earthResistance } from "../../src/engineering/earthResistance";

// IEC 62271-200 (memory): 30 A with a drop of 3 V is the limit, 100 mΩ.
it.each([
  [30, 3, 100],
  [10, 0, 0],
  [200, 0.01, 0.05],
])("%d A, %d V: %d mΩ", (amps, volts, expected) => {
  const found = earthResistance(amps, volts);
  expect(found.ok && found.value).toBeCloseTo(expected, 12);
});

it.each([
  [0, 1],
  [-30, 1],
  [30, -1],
])("refuses %d A, %d V", (amps, volts) => {
  expect(earthResistance(amps, volts)).toMatchObject({ ok: false, kind: "range" });
});
