import type { Result } from "../quantities/result";
import { computed } from "./computed";
import { notNegative } from "./notNegative";
import { notPositive } from "./notPositive";

/**
 * Burden in Ω from its apparent power at rated secondary current: Z = S / I².
 *
 * @param voltAmps burden, VA, 0 or more
 * @param amps rated secondary current, A, above 0
 * @returns Ω; `range` outside
 * @example burdenOhms(15, 5) // 0.6
 */
export const burdenOhms = (voltAmps: number, amps: number): Result<number> =>
  notNegative("Burden", voltAmps, "VA") ??
  notPositive("Rated secondary current", amps, "A") ??
  computed(voltAmps / amps ** 2);
