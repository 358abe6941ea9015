import { expect, it } from "vitest";
import { limitingVoltage } from "../../src/engineering/limitingVoltage";

// By hand from the definition of the secondary limiting e.m.f. in IEC 61869-2 (from memory); the power factor
// of the rated burden, 0.8 from 5 VA on and 1 below, as in 5.6.202.2.4 (read in a published copy).
it.each([
  // 20 · 1 A · |3 + 8 + 6i| Ω = 20 · √157 V
  [20, 1, 3, 10, 250.599],
  // 10 · 5 A · |0.2 + 0.48 + 0.36i| Ω = 50 · √0.592 V
  [10, 5, 0.2, 15, 38.471],
  // Below 5 VA in phase: 20 · 1 A · (1 + 2.5) Ω
  [20, 1, 1, 2.5, 70],
  [20, 1, 0, 5, 100],
])("factor %d, %d A, %d Ω, %d VA: %d V", (factor, secondary, winding, burden, volts) => {
  const found = limitingVoltage(factor, secondary, winding, burden);
  expect(found.ok && found.value).toBeCloseTo(volts, 2);
});

it.each([
  [0, 1, 3, 10],
  [20, 0, 3, 10],
  [20, 1, -1, 10],
  [20, 1, 3, 0],
])("refuses %d, %d, %d, %d", (factor, secondary, winding, burden) => {
  expect(limitingVoltage(factor, secondary, winding, burden)).toMatchObject({ kind: "range" });
});
