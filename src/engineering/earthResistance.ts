import type { Result } from "../quantities/result";
import { computed } from "./computed";
import { notNegative } from "./notNegative";
import { notPositive } from "./notPositive";

/**
 * Resistance of an earthing connection measured with four wires: R = U / I.
 *
 * @param amps test current, A, above 0
 * @param volts drop along the connection, V, 0 or more
 * @returns mΩ; `range` for a current not above 0 or a negative drop
 * @example earthResistance(30, 0.15) // 5
 */
export const earthResistance = (amps: number, volts: number): Result<number> =>
  notPositive("Test current", amps, "A") ??
  notNegative("Voltage drop", volts, "V") ??
  computed((volts / amps) * 1000);
