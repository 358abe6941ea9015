import { type Result, refuse } from "../quantities/result";
import { computed } from "./computed";
import { notNegative } from "./notNegative";

/**
 * Difference between the slowest and the fastest pole of one operation.
 *
 * @param times two or more, ms, 0 or more
 * @returns ms; `none` for fewer than two times, `range` for a negative one
 * @example timeSpread([45.2, 46.1, 45.6]) // 0.9
 */
export const timeSpread = (times: readonly number[]): Result<number> => {
  if (times.length < 2) return refuse("none", (text) => text.engineering.fewTimes);
  const fastest = times.reduce((a, b) => Math.min(a, b));
  const slowest = times.reduce((a, b) => Math.max(a, b));
  return (
    notNegative("Fastest time", fastest, "ms") ??
    notNegative("Slowest time", slowest, "ms") ??
    computed(slowest - fastest)
  );
};
