import { insulationMinimum } from "../standards/insulationMinimum";
import { figure } from "./figure";
import { basisOf, optional, quantity } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum IrminimumBasis {
  /** IEC 62271 and companions */
  IEC = "IEC",
  /** ANSI/NETA and IEEE */
  NETA = "NETA",
}

/**
 * Least acceptable insulation resistance of a main circuit at 20 °C, MΩ.
 * @customfunction IRMINIMUM
 * @param ratedkV Rated voltage of the circuit, kV
 * @param [basis] IEC or NETA; IEC if left out
 * @returns MΩ
 * @example =GEAR.IRMINIMUM(12, "NETA") // 5000
 * @refuses =GEAR.IRMINIMUM(12, "IEC")
 * @refuses =GEAR.IRMINIMUM(12, "PROJECT")
 * @refuses =GEAR.IRMINIMUM(0, "NETA")
 */
export function irminimum(ratedkV: unknown[][], basis?: IrminimumBasis): unknown[][] {
  return spill(
    [quantity("Rated voltage", ratedkV, "kV"), optional(basisOf(basis), "IEC")],
    (kV, by) => figure(insulationMinimum(kV, { basis: by })),
  );
}
