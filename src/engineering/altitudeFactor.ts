import type { Result } from "../quantities/result";
import { computed } from "./computed";
import { outside } from "./outside";

/**
 * Factor by which external insulation above 1000 m must be stronger, K = exp(m (H − 1000) / 8150).
 *
 * IEC 62271-1:2011 (read). It applies to insulation in open air, not to sealed gas or solids.
 *
 * @param metres altitude of the site above sea level, m, −500 to 6000; 1 up to 1000 m
 * @param exponent m, 0 to 1: 1 for power frequency and lightning impulse
 * @returns a pure number, 1 or more; `range` outside
 * @example altitudeFactor(2000) // 1.13
 */
export const altitudeFactor = (metres: number, exponent = 1): Result<number> =>
  outside("Altitude", metres, -500, 6000, "m") ??
  outside("Exponent", exponent, 0, 1, "") ??
  computed(Math.exp((exponent * Math.max(0, metres - 1000)) / 8150));
