import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type AirTest, airFactor } from "../../src/engineering/airFactor";
import { altitudeFactor } from "../../src/engineering/altitudeFactor";
import { inWords } from "../support/inWords";

const usual: AirTest = {
  temperature: 20,
  pressure: 101.3,
  humidity: 63.5,
  testkV: 28,
  gap: 0.12,
  wave: "AC",
};
const factor = (change: Partial<AirTest>) => {
  const found = airFactor({ ...usual, ...change });
  return found.ok ? found.value : Number.NaN;
};

describe("airFactor", () => {
  // IEC 60060-1:2010, standard reference atmosphere 20 °C, 101.3 kPa, 11 g/m³ (memory). Saturated air
  // of 20 °C holds 17.3 g/m³ (physics handbooks, memory), so that 11 g/m³ is 63.6 %.
  it.each(["AC", "DC", "impulse"] as const)("is 1 in the standard atmosphere: %s", (wave) => {
    expect(factor({ wave, humidity: 63.6 })).toBeCloseTo(1, 3);
  });

  // Relative air density in textbooks of high-voltage engineering: 0.386 b / (273 + t), b in mmHg
  // (memory). Where g is 2 or more, m is 1 and w is 0: the factor is the density alone.
  it.each([
    [700, 20],
    [720, 30],
    [740, 10],
  ])("is the air's density at %d mmHg, %d °C over a short gap", (mmHg, temperature) => {
    const pressure = (mmHg * 101.325) / 760;
    const found = factor({ temperature, pressure, humidity: 40, gap: 0.01 });
    expect(found / ((0.386 * mmHg) / (273 + temperature))).toBeCloseTo(1, 2.5);
  });

  it("is 1 over a path so long that g stays below 0.2, whatever the air", () => {
    expect(factor({ pressure: 90, humidity: 40, gap: 1 })).toBe(1);
  });

  it("takes humidity over density at g of 1.1: the AC factor rises 1.2 % per g/m³", () => {
    // g = 1.1 · 28 · √2 / (500 · L · δ · k) = 1.1 at L = 0.0792 m in the standard atmosphere.
    const [dry, moist] = [
      factor({ humidity: 52, gap: 0.0792 }),
      factor({ humidity: 75, gap: 0.0792 }),
    ];
    const grams = (75 - 52) * 0.173;
    expect((moist - dry) / grams).toBeCloseTo(0.012, 3);
  });

  it("has no step where the exponents change pieces", () => {
    const at = (g: number) => (1.1 * 28 * Math.SQRT2) / (500 * g);
    const air = { pressure: 95, humidity: 60, temperature: 20 };
    const reference = 95 / 101.3;
    for (const g of [0.2, 1, 1.2, 2])
      expect(factor({ ...air, gap: at(g * reference * 1.0001) })).toBeCloseTo(
        factor({ ...air, gap: at(g * reference * 0.9999) }),
        3,
      );
  });

  it.each<[Partial<AirTest>, string]>([
    [{ humidity: 101 }, "Relative humidity must be from 0 to 100 %; 101 is outside."],
    [{ humidity: 0 }, "Relative humidity must be above 0 %; 0 is not."],
    [{ pressure: 1013 }, "Air pressure must be from 50 to 110 kPa; 1013 is outside."],
    [{ testkV: -28 }, "Test voltage must be above 0 kV; -28 is not."],
    [{ gap: 0 }, "Shortest discharge path must be above 0 m; 0 is not."],
    [{ temperature: 70 }, "Air temperature must be from -40 to 60 °C; 70 is outside."],
  ])("refuses %o", (change, reason) => {
    expect(inWords(airFactor({ ...usual, ...change }))).toEqual({
      ok: false,
      kind: "range",
      say: reason,
    });
  });

  it("does not answer where the standard vouches for nothing: very moist or very thin air", () => {
    expect(airFactor({ ...usual, temperature: 32, humidity: 85 })).toMatchObject({ kind: "range" });
    expect(airFactor({ ...usual, pressure: 70, gap: 0.05 })).toMatchObject({ kind: "range" });
  });

  it("never throws and never gives a number that is none", () => {
    const any = fc.oneof(fc.double(), fc.double({ min: 0, max: 110, noNaN: true }));
    fc.assert(
      fc.property(any, any, any, any, any, (temperature, pressure, humidity, testkV, gap) => {
        const found = airFactor({ temperature, pressure, humidity, testkV, gap, wave: "DC" });
        expect(!found.ok || Number.isFinite(found.value)).toBe(true);
      }),
    );
  });
});

describe("altitudeFactor", () => {
  // IEC 62271-1:2011 (read): 1.13 at 2000 m; 1 up to 1000 m.
  it.each([
    [0, 1, 1],
    [1000, 1, 1],
    [2000, 1, 1.13],
    [2000, 0, 1],
  ])("%d m, m = %d: %d", (metres, exponent, expected) => {
    const found = altitudeFactor(metres, exponent);
    expect(found.ok && found.value).toBeCloseTo(expected, 2);
  });

  it.each([
    [7000, 1],
    [2000, 1.1],
    [Number.NaN, 1],
  ])("refuses %d m with m = %d", (metres, exponent) => {
    expect(altitudeFactor(metres, exponent).ok).toBe(false);
  });
});
