import { describe, expect, it } from "vitest";
import { type Curve, curves } from "../../src/engineering/curves";
import { curveTime } from "../../src/engineering/curveTime";

/** Operating times, s, printed in relay makers' manuals (read), at these multiples of pick-up. */
const MULTIPLES = [1.5, 2, 3, 4, 5, 6, 7, 8, 9, 10];
const PUBLISHED: [Curve, number, number[]][] = [
  ["IEEE very", 1, [16.179, 7.028, 2.942, 1.798, 1.308, 1.051, 0.9, 0.802, 0.736, 0.689]],
  ["IEEE moderately", 1, [6.439, 3.803, 2.432, 1.946, 1.688, 1.526, 1.412, 1.327, 1.26, 1.207]],
  ["IEC standard", 0.05, [0.86, 0.501, 0.315, 0.249, 0.214, 0.192, 0.176, 0.165, 0.156, 0.149]],
  ["IEC standard", 0.1, [1.719, 1.003, 0.63, 0.498, 0.428, 0.384, 0.353, 0.33, 0.312, 0.297]],
];
const published = PUBLISHED.flatMap(([curve, setting, times]) =>
  times.map((time, i) => [curve, MULTIPLES[i] ?? 0, setting, time] as const),
);

const time = (...args: Parameters<typeof curveTime>) => {
  const found = curveTime(...args);
  return found.ok ? found.value : Number.NaN;
};

describe("curveTime", () => {
  it.each(published)("%s at %d times, setting %d: %d s", (curve, multiple, setting, expected) => {
    expect(Math.abs(time(curve, multiple, setting) - expected)).toBeLessThan(0.0011);
  });

  // By the formulas of IEC 60255-151 (read): 13.5 / 9 at ten times, 80 / 99, 120 / 9.
  it.each([
    ["IEC very", 1.5],
    ["IEC extremely", 80 / 99],
    ["IEC long-time", 120 / 9],
  ] as const)("%s at ten times, setting 1: %d s", (curve, expected) => {
    expect(time(curve, 10, 1)).toBeCloseTo(expected, 12);
  });

  it("falls with current on every curve, and is proportional to the setting", () => {
    for (const curve of Object.keys(curves) as Curve[])
      for (let multiple = 1.2; multiple < 19.8; multiple += 0.2) {
        expect(time(curve, multiple + 0.1, 1)).toBeLessThan(time(curve, multiple, 1));
        expect(time(curve, multiple, 0.3)).toBeCloseTo(0.3 * time(curve, multiple, 1), 9);
      }
  });

  it.each([
    [1, 1],
    [0.5, 1],
    [-2, 1],
    [20.1, 1],
    [2, 0],
    [2, -1],
  ])("refuses %d times at setting %d", (multiple, setting) => {
    expect(curveTime("IEC very", multiple, setting)).toMatchObject({ ok: false, kind: "range" });
  });

  it("answers just above pick-up or says that the time is too great", () => {
    const found = curveTime("IEC standard", 1 + Number.EPSILON, 1);
    expect(!found.ok || Number.isFinite(found.value)).toBe(true);
  });

  it("knows its curves", () => {
    expect(curveTime("IEC slow" as Curve, 2, 1)).toMatchObject({ ok: false, kind: "wrong" });
    expect(curveTime("toString" as Curve, 2, 1)).toMatchObject({ ok: false, kind: "wrong" });
  });
});
