import type { Result } from "../quantities/result";
import { computed } from "./computed";
import { notNegative } from "./notNegative";
import { notPositive } from "./notPositive";

/**
 * Ratio error of an instrument transformer, ε = (k · S − P) / P · 100 (IEC 61869-1, memory).
 *
 * @param primary applied primary current or voltage, above 0
 * @param secondary measured secondary current or voltage in the same unit, 0 or more
 * @param ratio rated ratio k, above 0: 80 for 400/5
 * @returns percent, negative where the transformer gives too little; `range` outside
 * @example ratioError(400, 4.98, 80) // -0.4
 */
export const ratioError = (primary: number, secondary: number, ratio: number): Result<number> =>
  notPositive("Primary value", primary, "") ??
  notNegative("Secondary value", secondary, "") ??
  notPositive("Rated ratio", ratio, "") ??
  computed(((ratio * secondary - primary) / primary) * 100);
