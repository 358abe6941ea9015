import fc from "fast-check";
import { expect, test } from "vitest";
import { decimals } from "../../src/check/among/similar";

/** Digits after the point of the number as JavaScript writes it, which is the shortest that reads back. */
const written = (value: number) => String(value).split(".")[1]?.length ?? 0;

test("decimals of a number are those that it is written with", () => {
  for (const [value, digits] of [
    [5, 0],
    [0, 0],
    [0.1, 1],
    [-2.25, 2],
    [0.1 + 0.2, 17],
    [1_234_567.891, 3],
    [1e21, 0],
  ] as const)
    expect(decimals(value)).toBe(digits);
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.nat(8), (any, digits) => {
      for (const value of [any, Number((any % 1e6).toFixed(digits))])
        expect(decimals(value)).toBe(written(value));
    }),
    { numRuns: 2000 },
  );
});
