import { expect, it } from "vitest";
import { absorptionRatio, polarizationIndex } from "../../src/engineering/ratios";
import { english } from "../support/inWords";

// IEEE 43 (read in published quotations of the 2000 and 2013 editions): 20 GΩ to 150 GΩ would be 7.5,
// outside the valid range, as R(1 min) is above 5000 MΩ.
it("says that the index of 20 GΩ and 150 GΩ is not meaningful", () => {
  const found = polarizationIndex(20_000, 150_000);
  expect(found).toMatchObject({ ok: false, kind: "none" });
  expect(!found.ok && found.say(english)).toContain("not meaningful");
});

it("still answers at 5000 MΩ", () => {
  expect(polarizationIndex(5000, 10_000)).toEqual({ ok: true, value: 2 });
});

it.each([
  [100, 140, 1.4],
  [2000, 1900, 0.95],
])("%d MΩ to %d MΩ is %d", (first, second, expected) => {
  expect(absorptionRatio(first, second)).toEqual({ ok: true, value: expected });
});

it.each([
  [0, 1],
  [1, 0],
  [-1, 1],
])("needs resistances above zero: %d, %d", (first, second) => {
  expect(absorptionRatio(first, second)).toMatchObject({ ok: false, kind: "range" });
  expect(polarizationIndex(first, second)).toMatchObject({ ok: false, kind: "range" });
});
