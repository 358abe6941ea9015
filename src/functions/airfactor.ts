import { AIR_RULES, airFactor } from "../engineering/airFactor";
import { optional, quantity, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum AirfactorWave {
  /** Power frequency */
  AC = "AC",
  /** Direct voltage */
  DC = "DC",
  /** Lightning or switching impulse */
  impulse = "impulse",
}

/** @customenum {string} */
export enum AirfactorRule {
  /** IEC 60060-1, exponents from the parameter g */
  g = "g",
  /** IEC 62271-1, rated voltages up to 52 kV */
  switchgear = "switchgear",
  /** The same with internal insulation in parallel: counts from 0.95 to 1.05 */
  parallel = "parallel",
}

/**
 * Atmospheric correction factor of a withstand test in air, IEC 60060-1. The voltage to apply is this times the standard voltage.
 * @customfunction AIRFACTOR
 * @param temperature Air temperature, °C
 * @param pressure Air pressure, kPa, such as 101.3
 * @param humidity Relative humidity, %
 * @param testkV Test voltage, kV: rms for AC, peak for an impulse
 * @param gap Shortest discharge path, m
 * @param [wave] AC, DC or impulse; AC if left out
 * @param [rule] g, switchgear or parallel; g if left out
 * @returns Factor, a pure number
 * @example =GEAR.AIRFACTOR(20, 90, 63.5, 28, 0.05) // 0.891
 * @example =GEAR.AIRFACTOR(20, 101.3, 45, 22.4, 0.12, "AC", "switchgear") // 0.961
 * @refuses =GEAR.AIRFACTOR(20, 90, 101, 28, 0.05)
 * @refuses =GEAR.AIRFACTOR(20, 60, 50, 28, 0.05)
 */
export function airfactor(
  temperature: unknown[][],
  pressure: unknown[][],
  humidity: unknown[][],
  testkV: unknown[][],
  gap: unknown[][],
  wave?: AirfactorWave,
  rule?: AirfactorRule,
): unknown[][] {
  return spill(
    [
      quantity("Air temperature", temperature, "°C"),
      quantity("Air pressure", pressure, "kPa"),
      quantity("Relative humidity", humidity, "%"),
      quantity("Test voltage", testkV, "kV"),
      quantity("Shortest discharge path", gap, "m"),
      optional(word("Wave", wave, ["AC", "DC", "impulse"] as const), "AC"),
      optional(word("Rule", rule, AIR_RULES), "g"),
    ],
    (celsius, kPa, percent, kV, metres, shape, by) =>
      airFactor({
        temperature: celsius,
        pressure: kPa,
        humidity: percent,
        testkV: kV,
        gap: metres,
        wave: shape,
        rule: by,
      }),
  );
}
