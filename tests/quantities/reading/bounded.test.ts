import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bounded, readBounded } from "../../../src/quantities/reading/bounded";
import { readPlain } from "../../../src/quantities/reading/readPlain";
import { judge, SENSES } from "../../../src/standards/judge";
import { english } from "../../support/inWords";

const sides = ["above", "below"] as const;
const read = (cell: unknown) => {
  const found = readBounded(cell);
  if (!found.ok) throw new Error(found.say(english));
  return found.value;
};

describe("bounded", () => {
  it.each([
    [9387403.933595695, "above", "> 9387400"],
    [9387403.933595695, "below", "< 9387410"],
    [9387409.9, "above", "> 9387400"],
    [999999.97, "above", "> 999999"],
    [999999.97, "below", "< 1000000"],
    [3160000, "above", "> 3160000"],
    [0.123456789, "below", "< 0.123457"],
    [0.0000005, "below", "< 0.0000005"],
    [1.23456789e-8, "above", "> 0.0000000123456"],
    [123456789012345, "above", "> 123456000000000"],
    [999999999999999, "below", "< 1000000000000000"],
    [-12.3456789, "above", "> -12.3457"],
    [-12.3456789, "below", "< -12.3456"],
    [0, "below", "< 0"],
  ] as const)("%d, %s: %s", (value, bound, text) => {
    expect(bounded({ value, bound })).toBe(text);
  });

  it("leaves an exact number as it is", () => {
    expect(bounded({ value: 9387403.933595695, bound: "exact" })).toBe(9387403.933595695);
  });

  const finite = fc.double({ noNaN: true, noDefaultInfinity: true });

  it("rounds to the safe side, by less than one in a hundred thousand", () => {
    fc.assert(
      fc.property(finite, fc.constantFrom(...sides), (value, bound) => {
        const back = read(bounded({ value, bound }));
        expect(back.bound).toBe(bound);
        expect(bound === "above" ? back.value <= value : back.value >= value).toBe(true);
        expect(Math.abs(back.value / 1e5 - value / 1e5)).toBeLessThanOrEqual(
          Math.abs(value / 1e5) * 1.1e-5 + Number.MIN_VALUE,
        );
      }),
      { numRuns: 2000 },
    );
  });

  it("writes at most six figures, and no exponent from a billionth to below 1e15", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-9, max: 9.99e14, noNaN: true }),
        fc.constantFrom(...sides),
        (value, bound) => {
          const [, number = ""] = String(bounded({ value, bound })).split(" ");
          expect(number).toMatch(/^\d+(\.\d+)?$/);
          const figures = number.replace(".", "").replace(/^0+/, "").replace(/0+$/, "");
          expect(figures.length).toBeLessThanOrEqual(6);
        },
      ),
    );
  });

  it("never makes a verdict of what was inconclusive", () => {
    const near = fc.double({ min: 0.99999, max: 1.00001, noNaN: true });
    const size = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(
        size,
        near,
        fc.constantFrom(...sides),
        fc.constantFrom(...SENSES),
        (value, ratio, bound, sense) => {
          if (judge({ value, bound }, value * ratio, sense) === "Inconclusive")
            expect(judge(read(bounded({ value, bound })), value * ratio, sense)).toBe(
              "Inconclusive",
            );
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("written again stays what it is", () => {
    fc.assert(
      fc.property(finite, fc.constantFrom(...sides), (value, bound) => {
        const once = bounded({ value, bound });
        expect(bounded(read(once))).toBe(once);
      }),
    );
  });
});

describe("readBounded", () => {
  it.each([
    ["> 3160000", { value: 3160000, bound: "above" }],
    ["< 0.0000005", { value: 5e-7, bound: "below" }],
    [" > 1.125 ", { value: 1.125, bound: "above" }],
    [5200, { value: 5200, bound: "exact" }],
  ])("%j", (cell, expected) => {
    expect(read(cell)).toEqual(expected);
  });

  it.each(["5200", ">5", "> 5 GΩ", "> 1e400", "OL", "", null, true, Number.NaN])(
    "refuses %j",
    (cell) => {
      expect(readBounded(cell)).toMatchObject({ ok: false, kind: "wrong" });
    },
  );
});

describe("readPlain", () => {
  it.each([
    [5, 5],
    ["5000", 5000],
    [" 1.125 ", 1.125],
    ["-1.5e3", -1500],
    [".5", 0.5],
  ])("%j is %d", (cell, value) => {
    expect(readPlain(cell)).toEqual({ ok: true, value });
  });

  it.each(["", " ", "5 MΩ", "1,5", "0x10", "> 5", null, true, Number.POSITIVE_INFINITY])(
    "refuses %j",
    (cell) => {
      expect(readPlain(cell)).toMatchObject({ ok: false, kind: "wrong" });
    },
  );
});
