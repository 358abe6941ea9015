import { describe, expect, it } from "vitest";
import { interpolate } from "../../src/engineering/interpolate";
import { monotoneCurve } from "../../src/engineering/monotoneCurve";

describe("interpolate", () => {
  it.each([
    [0, undefined],
    [1, 10],
    [1.5, 15],
    [3, 30],
    [3.1, undefined],
    [Number.NaN, undefined],
  ])("at %d: %d", (x, expected) => {
    expect(
      interpolate(
        [
          [1, 10],
          [2, 20],
          [3, 30],
        ],
        x,
      ),
    ).toBe(expected);
  });
});

describe("monotoneCurve", () => {
  const points = [
    [0, 0],
    [1, 0.1],
    [2, 2],
    [4, 2.1],
    [5, 5],
  ] as const;
  const curve = monotoneCurve(points);

  it("meets every point", () => {
    for (const [x, y] of points) expect(curve(x)).toBeCloseTo(y, 12);
  });

  it("rises all the way, where a common spline would swing", () => {
    for (let x = 0; x < 5; x += 0.01) expect(curve(x + 0.01)).toBeGreaterThanOrEqual(curve(x));
  });

  it("goes straight on beyond its ends", () => {
    expect(curve(7) - curve(6)).toBeCloseTo(curve(6) - curve(5), 9);
    expect(curve(-1) - curve(-2)).toBeCloseTo(curve(0) - curve(-1), 9);
  });
});
