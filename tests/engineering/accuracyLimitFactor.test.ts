import { expect, it } from "vitest";
import { accuracyLimitFactor } from "../../src/engineering/accuracyLimitFactor";
import { burdenOhms } from "../../src/engineering/burdenOhms";

// A relay maker's manual (read): 1 A core, R_ct 3 Ω, rated burden 5 Ω, connected 0.6 Ω, factor 20
// needed: 20 · 3.6 / 8 = 9, so that a 5P10 core is enough and leaves 10 · 8 / 3.6.
it.each([
  [9, 3, 5, 0.6, 20],
  [10, 3, 5, 0.6, 22.222],
  [20, 3, 5, 5, 20],
])("factor %d, %d Ω, rated %d Ω, actual %d Ω leaves %d", (factor, winding, rated, actual, left) => {
  const found = accuracyLimitFactor(factor, winding, rated, actual);
  expect(found.ok && found.value).toBeCloseTo(left, 3);
});

it.each([
  [0, 3, 5, 1],
  [20, -3, 5, 1],
  [20, 0, 5, 0],
  [20, 3, 5, -1],
])("refuses %d, %d, %d, %d", (factor, winding, rated, actual) => {
  expect(accuracyLimitFactor(factor, winding, rated, actual)).toMatchObject({ kind: "range" });
});

// S = I² Z: 15 VA at 5 A is 0.6 Ω, 5 VA at 1 A is 5 Ω.
it.each([
  [15, 5, 0.6],
  [5, 1, 5],
  [0, 1, 0],
])("%d VA at %d A is %d Ω", (voltAmps, amps, ohms) => {
  expect(burdenOhms(voltAmps, amps)).toEqual({ ok: true, value: ohms });
});

it("needs a secondary current", () => {
  expect(burdenOhms(15, 0)).toMatchObject({ ok: false, kind: "range" });
});
