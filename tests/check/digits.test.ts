import fc from "fast-check";
import { expect, test } from "vitest";
import { digits } from "../../src/check/among/chance";

/** Digits of the number as JavaScript writes it, which is the shortest that reads back. */
const written = (value: number): number =>
  Math.abs(value)
    .toExponential()
    .split("e")[0]
    ?.replace(".", "")
    .replace(/^0*|0*$/g, "").length ?? 0;

test("digits of a number are those that it is written with, but for zeros at either end", () => {
  for (const [value, count] of [
    [0, 0],
    [5, 1],
    [-1200, 2],
    [0.05, 1],
    [10.05, 4],
    [999_999, 6],
    [0.1 + 0.2, 17],
  ] as const)
    expect(digits(value)).toBe(count);
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.nat(8), (any, places) => {
      for (const value of [any, Number((any % 1e6).toFixed(places)), Math.round(any % 1e16)])
        expect(digits(value)).toBe(written(value));
    }),
    { numRuns: 2000 },
  );
});
