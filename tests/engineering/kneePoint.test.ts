import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { excitingCurrent } from "../../src/engineering/excitingCurrent";
import { KNEE_RULES, kneePoint } from "../../src/engineering/kneePoint";
import { english } from "../support/inWords";

/**
 * An invented core whose knees follow from its formula: I = a V^0.7 + b V^14, equal parts at 150 V.
 * The definitions are IEC 61869-2 and IEEE C57.13.1 (read in quotation); the exact knees are found
 * here by halving on the formula.
 */
const A = 1e-3;
const B = A * 150 ** (0.7 - 14);
const current = (volts: number) => A * volts ** 0.7 + B * volts ** 14;
const steepness = (volts: number) =>
  (0.7 * A * volts ** 0.7 + 14 * B * volts ** 14) / current(volts);
const rootOf = (f: (volts: number) => number) => {
  let [low, high] = [10, 300];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return low;
};
const exact = {
  "IEC 10/50": rootOf((v) => current(1.1 * v) / current(v) - 1.5),
  "IEEE 45": rootOf((v) => steepness(v) - 1),
  "IEEE 30": rootOf((v) => steepness(v) - Math.sqrt(3)),
};

const even = Array.from({ length: 21 }, (_, i) => 10 + 10 * i);
const uneven = [
  5, 20, 50, 80, 95, 105, 108, 112, 118, 121, 125, 131, 134, 136, 140, 145, 149, 158, 170, 190, 215,
];
/** A fixed, irregular ripple of ±1.5 %. */
const ripple = (i: number) => 1 + 0.015 * Math.sin(12.9898 * (i + 1) ** 2);

const ratio = (volts: number[], amps: number[], rule: (typeof KNEE_RULES)[number]) => {
  const found = kneePoint(volts, amps, rule);
  return found.ok ? found.value / exact[rule] : found.say(english);
};

describe("kneePoint", () => {
  it.each(KNEE_RULES)("finds the knee by %s on even and uneven points within 3 %%", (rule) => {
    for (const volts of [even, uneven]) {
      const found = ratio(volts, volts.map(current), rule);
      expect(found).toBeGreaterThan(0.97);
      expect(found).toBeLessThan(1.03);
    }
  });

  it.each(KNEE_RULES)("finds it by %s through noise of 1.5 %% within 5 %%", (rule) => {
    for (const volts of [even, uneven]) {
      const found = ratio(
        volts,
        volts.map((v, i) => current(v) * ripple(i)),
        rule,
      );
      expect(found).toBeGreaterThan(0.95);
      expect(found).toBeLessThan(1.05);
    }
  });

  it("has its three knees in the order of their definitions: 45° below 30° below 10/50", () => {
    const amps = even.map(current);
    const [iec, at45, at30] = KNEE_RULES.map((rule) => {
      const found = kneePoint(even, amps, rule);
      return found.ok ? found.value : Number.NaN;
    });
    expect(at45).toBeLessThan(at30 ?? 0);
    expect(at30).toBeLessThan(iec ?? 0);
  });

  it("is the same of a curve taken from its upper end down, as a core is demagnetized on the way", () => {
    const amps = even.map(current);
    const found = kneePoint(even.toReversed(), amps.toReversed());
    expect(found).toMatchObject({ ok: true });
    expect(found).toEqual(kneePoint(even, amps));
    expect(excitingCurrent(even.toReversed(), amps.toReversed(), 133)).toEqual(
      excitingCurrent(even, amps, 133),
    );
  });

  it("keeps its definition: 10 % more voltage takes 50 % more current", () => {
    const found = kneePoint(even, even.map(current));
    const knee = found.ok ? found.value : Number.NaN;
    expect(current(1.1 * knee) / current(knee)).toBeCloseTo(1.5, 1);
  });

  it.each<[string, number[], number[], string, string]>([
    ["too few points", [1, 2, 3], [1, 2, 3], "none", "at least 6 points"],
    ["unlike lists", [1, 2], [1], "wrong", "a current for each voltage"],
    [
      "unsorted voltages",
      [1, 2, 4, 3, 5, 6],
      [1, 2, 3, 4, 5, 6],
      "range",
      "point 4 has 3 V after 4 V",
    ],
    [
      "falling current",
      [1, 2, 3, 4, 5, 6],
      [1, 2, 3, 2, 5, 6],
      "range",
      "point 4 has 2 A after 3 A",
    ],
    ["a zero", [0, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], "range", "above 0 V"],
    ["no number", [1, 2, 3, 4, 5, 6], [1, 2, Number.NaN, 4, 5, 6], "wrong", "point 3"],
    ["no knee yet", [1, 2, 3, 4, 5, 6], [1, 1.5, 2, 2.5, 3, 3.5], "none", "go on to a higher"],
    [
      "past the knee",
      [100, 101, 102, 103, 104, 105],
      [1, 2, 4, 8, 16, 32],
      "none",
      "begin at a lower",
    ],
  ])("refuses %s", (_, volts, amps, kind, reason) => {
    const found = kneePoint(volts, amps);
    expect(found).toMatchObject({ ok: false, kind });
    expect(!found.ok && found.say(english)).toContain(reason);
  });

  it("never throws and never gives a number that is none", () => {
    const rising = fc
      .array(fc.double({ min: 1e-9, max: 1e6, noNaN: true }), { minLength: 6, maxLength: 20 })
      .map((values) => values.toSorted((a, b) => a - b));
    const list = fc.oneof(rising, fc.array(fc.double()));
    fc.assert(
      fc.property(list, list, fc.constantFrom(...KNEE_RULES), (volts, amps, rule) => {
        const length = Math.min(volts.length, amps.length);
        const found = kneePoint(volts.slice(0, length), amps.slice(0, length), rule);
        expect(!found.ok || Number.isFinite(found.value)).toBe(true);
      }),
    );
  });
});
