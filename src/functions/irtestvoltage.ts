import { insulationTestVoltage } from "../standards/insulationTestVoltage";
import { figure } from "./figure";
import { basisOf, optional, quantity } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum IrtestvoltageBasis {
  /** IEC 62271 and companions */
  IEC = "IEC",
  /** ANSI/NETA and IEEE */
  NETA = "NETA",
}

/**
 * DC voltage for an insulation resistance test, V.
 * @customfunction IRTESTVOLTAGE
 * @param ratedkV Rated voltage of the circuit, kV
 * @param [basis] IEC or NETA; IEC if left out
 * @returns V
 * @example =GEAR.IRTESTVOLTAGE(12, "NETA") // 2500
 * @example =GEAR.IRTESTVOLTAGE(12, "IEC") // 5000
 * @refuses =GEAR.IRTESTVOLTAGE(145, "IEC")
 */
export function irtestvoltage(ratedkV: unknown[][], basis?: IrtestvoltageBasis): unknown[][] {
  return spill(
    [quantity("Rated voltage", ratedkV, "kV"), optional(basisOf(basis), "IEC")],
    (kV, by) => figure(insulationTestVoltage(kV, { basis: by })),
  );
}
