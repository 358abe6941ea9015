import type { Result } from "../quantities/result";
import { computed } from "./computed";
import { notNegative } from "./notNegative";
import { notPositive } from "./notPositive";

/**
 * Accuracy limit factor that a protective current transformer has left at its actual burden:
 * ALF' = ALF (R_ct + R_rated) / (R_ct + R_actual).
 *
 * Secondary resistances and burdens in Ω, taken as in phase (read in a relay maker's manual).
 *
 * @param factor rated accuracy limit factor, above 0, such as 20 of 5P20
 * @param winding secondary winding resistance R_ct at 75 °C, Ω, 0 or more
 * @param rated rated burden, Ω, 0 or more
 * @param actual connected burden, leads included, Ω, 0 or more; above 0 together with `winding`
 * @returns a pure number; `range` outside
 * @example accuracyLimitFactor(9, 3, 5, 0.6) // 20
 */
export const accuracyLimitFactor = (
  factor: number,
  winding: number,
  rated: number,
  actual: number,
): Result<number> =>
  notPositive("Accuracy limit factor", factor, "") ??
  notNegative("Winding resistance", winding, "Ω") ??
  notNegative("Rated burden", rated, "Ω") ??
  notNegative("Actual burden", actual, "Ω") ??
  notPositive("Winding resistance and actual burden together", winding + actual, "Ω") ??
  computed((factor * (winding + rated)) / (winding + actual));
