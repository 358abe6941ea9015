import type { Result } from "../quantities/result";
import { computed } from "./computed";
import { type InsulationMethod, insulationFactor } from "./insulationFactor";
import { notNegative } from "./notNegative";

/**
 * Insulation resistance at the base temperature, R_base = k · R_T, with k of `insulationFactor`.
 *
 * @param megohm reading, MΩ, 0 or more
 * @param temperature of the insulation, °C, −10 to 105
 * @param base temperature to correct to, °C, −10 to 105
 * @returns MΩ; `range` for a negative resistance or a temperature outside the table
 * @example insulationCorrect(1200, 35, "oil") // 3360
 */
export const insulationCorrect = (
  megohm: number,
  temperature: number,
  method: InsulationMethod = "solid",
  base = 20,
): Result<number> => {
  const factor = insulationFactor(temperature, method, base);
  return (
    notNegative("Insulation resistance", megohm, "MΩ") ??
    (factor.ok ? computed(megohm * factor.value) : factor)
  );
};
