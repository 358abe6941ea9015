import { expect, it } from "vitest";
import { timeSpread } from "../../src/engineering/timeSpread";

// By definition: the slowest pole less the fastest.
it.each([
  [[45.2, 46.1, 45.6], 0.9],
  [[30, 30, 30], 0],
])("%j ms: %d ms", (times, expected) => {
  const found = timeSpread(times);
  expect(found.ok && found.value).toBeCloseTo(expected, 9);
});

it.each([
  [[45], "none"],
  [[45, -1], "range"],
  [[45, Number.NaN], "wrong"],
])("refuses %j", (times, kind) => {
  expect(timeSpread(times)).toMatchObject({ ok: false, kind });
});
