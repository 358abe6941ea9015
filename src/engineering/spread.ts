import { type Result, refuse } from "../quantities/result";
import { computed } from "./computed";
import { notPositive } from "./notPositive";

/**
 * Greatest departure from the lowest value, as a fraction of the lowest: (greatest − lowest) / lowest.
 *
 * For contact resistances among poles or similar joints, more than 0.5 asks for investigation and is
 * not by itself a failure (read in a breaker maker's bulletin).
 *
 * @param values two or more, all above 0, all in one unit
 * @returns a fraction, 0 or more; `none` for fewer than two values, `range` for one not above 0
 * @example spread([50, 60, 76]) // 0.52
 */
export const spread = (values: readonly number[]): Result<number> => {
  if (values.length < 2) return refuse("none", (text) => text.engineering.fewValues);
  const lowest = values.reduce((a, b) => Math.min(a, b));
  const greatest = values.reduce((a, b) => Math.max(a, b));
  return (
    notPositive("Lowest value", lowest, "") ??
    notPositive("Greatest value", greatest, "") ??
    computed((greatest - lowest) / lowest)
  );
};
