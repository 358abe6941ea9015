import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { insulationCorrect } from "../../src/engineering/insulationCorrect";
import { INSULATION_METHODS, insulationFactor } from "../../src/engineering/insulationFactor";

const value = (...args: Parameters<typeof insulationFactor>) => {
  const found = insulationFactor(...args);
  return found.ok ? found.value : Number.NaN;
};

describe("insulationFactor", () => {
  // ANSI/NETA ATS-2025, table 100.14 (read), and a second published table that agrees from 0 °C to 75 °C.
  it.each([
    [-10, "solid", 0.25],
    [0, "oil", 0.25],
    [10, "solid", 0.63],
    [20, "solid", 1],
    [35, "oil", 2.8],
    [40, "solid", 2.5],
    [75, "oil", 44.7],
    [100, "oil", 254],
    [105, "solid", 50.4],
  ] as const)("at %d °C, %s, is %d", (temperature, method, expected) => {
    expect(value(temperature, method)).toBe(expected);
  });

  // The same table's rule of thumb (read): solid insulation halves per 15 K, oil per 10 K. The table
  // was rounded on its way: solid within 1.6 %, oil within 3.2 % up to 60 °C.
  it.each([5, 20, 35, 50, 65, 80])("doubles per 15 K: solid at %d °C", (t) => {
    expect(value(t, "solid") / 2 ** ((t - 20) / 15)).toBeCloseTo(1, 1.5);
  });
  it.each([0, 10, 20, 30, 40, 50, 60])("doubles per 10 K: oil at %d °C", (t) => {
    expect(value(t, "oil") / 2 ** ((t - 20) / 10)).toBeCloseTo(1, 1.2);
  });

  // Published examples of the halving rule (read): 150 MΩ at 20 °C is about 75 MΩ at 30 °C, 200 MΩ at
  // 20 °C is 25 MΩ at 50 °C.
  it("halves per 10 K", () => {
    expect(75 * value(30, "halving")).toBe(150);
    expect(25 * value(50, "halving")).toBe(200);
  });

  it("to 40 °C follows from the factors to 20 °C", () => {
    for (const method of ["solid", "oil"] as const)
      for (let t = -10; t <= 105; t += 2.5)
        expect(value(t, method, 40) * value(40, method)).toBeCloseTo(value(t, method), 9);
  });

  it("lies on the logarithm between two rows", () => {
    expect(value(22.5, "solid")).toBeCloseTo(Math.sqrt(1 * 1.25), 12);
    expect(value(37.5, "oil")).toBeCloseTo(Math.sqrt(2.8 * 3.95), 12);
  });

  it.each([-10.1, 105.1, Number.POSITIVE_INFINITY])("is refused at %d °C", (t) => {
    expect(insulationFactor(t)).toMatchObject({ ok: false, kind: "range" });
    expect(insulationFactor(20, "oil", t)).toMatchObject({ ok: false, kind: "range" });
  });

  it("needs a known method and a number", () => {
    expect(insulationFactor(20, "paper" as "oil")).toMatchObject({ kind: "wrong" });
    expect(insulationFactor(Number.NaN)).toMatchObject({ kind: "wrong" });
  });

  it("rises with temperature", () => {
    const temperature = fc.double({ min: -10, max: 105, noNaN: true });
    fc.assert(
      fc.property(
        temperature,
        temperature,
        fc.constantFrom("solid", "oil", "halving"),
        (a, b, m) => {
          const [low, high] = [value(Math.min(a, b), m), value(Math.max(a, b), m)];
          expect(low).toBeLessThanOrEqual(high);
        },
      ),
    );
  });
});

describe("insulationCorrect", () => {
  // Published worked examples (read): 1200 MΩ at 35 °C, oil, is 3360 MΩ at 20 °C; 2 MΩ at 40 °C, oil, is 7.9 MΩ.
  it.each([
    [1200, 35, 3360],
    [2, 40, 7.9],
  ])("%d MΩ at %d °C, oil, is %d MΩ", (megohm, temperature, expected) => {
    const found = insulationCorrect(megohm, temperature, "oil");
    expect(found.ok && found.value).toBeCloseTo(expected, 9);
  });

  it("keeps a dead short as 0 MΩ, and refuses a negative reading", () => {
    expect(insulationCorrect(0, 30)).toEqual({ ok: true, value: 0 });
    expect(insulationCorrect(-1, 30)).toMatchObject({ ok: false, kind: "range" });
  });

  it("never throws and never gives a number that is none", () => {
    fc.assert(
      fc.property(
        fc.double(),
        fc.double(),
        fc.constantFrom(...INSULATION_METHODS),
        fc.double(),
        (megohm, temperature, method, base) => {
          const found = insulationCorrect(megohm, temperature, method, base);
          expect(!found.ok || Number.isFinite(found.value)).toBe(true);
        },
      ),
    );
  });
});
