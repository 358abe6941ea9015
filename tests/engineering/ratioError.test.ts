import { expect, it } from "vitest";
import { ratioError } from "../../src/engineering/ratioError";

// IEC 61869-1, definition of the ratio error (memory): (k · S − P) / P · 100.
it.each([
  [400, 5, 80, 0],
  [400, 4.98, 80, -0.4],
  [11000, 110.55, 100, 0.5],
  [100, 0, 80, -100],
])("%d, %d, %d: %d %%", (primary, secondary, ratio, expected) => {
  const found = ratioError(primary, secondary, ratio);
  expect(found.ok && found.value).toBeCloseTo(expected, 9);
});

it.each([
  [0, 5, 80],
  [400, -5, 80],
  [400, 5, 0],
])("refuses %d, %d, %d", (primary, secondary, ratio) => {
  expect(ratioError(primary, secondary, ratio)).toMatchObject({ ok: false, kind: "range" });
});
