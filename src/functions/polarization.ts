import { polarizationIndex, ratioOrReason } from "../engineering/ratios";
import { storedReasons } from "../messages/reasons";
import { reading } from "./inputs";
import { spill } from "./spill";

/**
 * Polarization index, R(10 min) / R(1 min), or text saying why it is not meaningful. It informs; it does not accept switchgear.
 * @customfunction POLARIZATION
 * @param r1min Resistance after 1 min, MΩ, or as written
 * @param r10min Resistance after 10 min, MΩ, or as written
 * @returns Index, a pure number, or text
 * @example =GEAR.POLARIZATION(1000, 2400) // 2.4
 * @example =GEAR.POLARIZATION(20000, 150000) // "The index is not meaningful: 20000 MΩ after 1 min is above 5000 MΩ (IEEE 43-2013)."
 * @refuses =GEAR.POLARIZATION(-1, 2400)
 */
export function polarization(r1min: unknown[][], r10min: unknown[][]): unknown[][] {
  return spill(
    [
      reading("Resistance after 1 min", r1min, "MΩ"),
      reading("Resistance after 10 min", r10min, "MΩ"),
    ],
    ratioOrReason(polarizationIndex, storedReasons()),
  );
}
