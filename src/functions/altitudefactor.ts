import { altitudeFactor } from "../engineering/altitudeFactor";
import { optional, pure, quantity } from "./inputs";
import { spill } from "./spill";

/**
 * Factor by which external insulation above 1000 m must be stronger.
 * @customfunction ALTITUDEFACTOR
 * @param metres Altitude of the site, m
 * @param [exponent] Exponent m, 0 to 1; 1 if left out, for power frequency and lightning impulse
 * @returns Factor, 1 or more
 * @example =GEAR.ALTITUDEFACTOR(2000) // 1.13
 * @refuses =GEAR.ALTITUDEFACTOR(9000)
 */
export function altitudefactor(metres: unknown[][], exponent?: unknown[][]): unknown[][] {
  return spill(
    [quantity("Altitude", metres, "m"), optional(pure("Exponent", exponent), 1)],
    altitudeFactor,
  );
}
