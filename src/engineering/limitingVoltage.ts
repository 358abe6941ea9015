import type { Result } from "../quantities/result";
import { computed } from "./computed";
import { notNegative } from "./notNegative";
import { notPositive } from "./notPositive";

/**
 * Secondary limiting e.m.f. of a protective current transformer, behind the winding: the voltage that its core
 * makes at the accuracy limit current with its rated burden, ALF I_sr |R_ct + Z_b|.
 *
 * The burden has a power factor of 0.8 lagging from 5 VA on, below that of 1 (IEC 61869-2:2012, 5.6.202.2.4;
 * read in a published copy). The e.m.f. is that of its definition (same standard; from memory).
 *
 * @param factor rated accuracy limit factor, above 0, such as 20 of 5P20
 * @param secondary rated secondary current, A, above 0
 * @param winding secondary winding resistance R_ct at 75 °C, Ω, 0 or more
 * @param burden rated burden, VA, above 0
 * @returns V; `range` outside
 * @example limitingVoltage(20, 1, 3, 10) // 250.599
 */
export const limitingVoltage = (
  factor: number,
  secondary: number,
  winding: number,
  burden: number,
): Result<number> =>
  notPositive("Accuracy limit factor", factor, "") ??
  notPositive("Rated secondary current", secondary, "A") ??
  notNegative("Winding resistance", winding, "Ω") ??
  notPositive("Rated burden", burden, "VA") ??
  computed(factor * secondary * across(winding, burden / secondary ** 2, burden < 5 ? 1 : 0.8));

const across = (winding: number, impedance: number, powerFactor: number): number =>
  Math.hypot(winding + impedance * powerFactor, impedance * Math.sqrt(1 - powerFactor ** 2));
