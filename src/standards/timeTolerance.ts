import type { Criterion } from "./criterion";

/**
 * How far a measured operating time may stand from the expected one, s: 5 % or 40 ms, whichever is
 * greater (practice; the relay's own manual comes first).
 *
 * @param expected operating time, s, 0 or more
 * @example timeTolerance(2).value // 0.1
 */
export const timeTolerance = (expected: number): Criterion => ({
  value: Math.max(0.05 * expected, 0.04),
  source: {
    document: "Common practice",
    edition: "",
    place: "operating time of protection elements",
    certainty: "practice",
  },
});
