import { cableTest, usualCableWave } from "../standards/cableTest";
import { figure } from "./figure";
import { basisOf, optional, quantity, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum CabletestBasis {
  /** IEC 62271 and companions */
  IEC = "IEC",
  /** ANSI/NETA and IEEE */
  NETA = "NETA",
}

/** @customenum {string} */
export enum CabletestWave {
  /** Power frequency, kV rms */
  AC = "AC",
  /** Direct voltage, kV */
  DC = "DC",
  /** Very low frequency, kV rms */
  VLF = "VLF",
}

/**
 * Withstand voltage of a medium-voltage cable after laying, phase to earth, kV.
 * @customfunction CABLETEST
 * @param ratedkV Rated voltage of the cable, kV
 * @param [basis] IEC or NETA; IEC if left out
 * @param [wave] AC, DC or VLF; AC for IEC and VLF for NETA if left out
 * @returns kV, rms for AC and VLF
 * @example =GEAR.CABLETEST(12, "IEC", "DC") // 24
 * @example =GEAR.CABLETEST(15, "NETA") // 21
 * @refuses =GEAR.CABLETEST(40.5)
 * @refuses =GEAR.CABLETEST(12, "IEC", "VLF")
 */
export function cabletest(
  ratedkV: unknown[][],
  basis?: CabletestBasis,
  wave?: CabletestWave,
): unknown[][] {
  return spill(
    [
      quantity("Rated voltage", ratedkV, "kV"),
      optional(basisOf(basis), "IEC"),
      optional(word("Wave", wave, ["AC", "DC", "VLF", "usual"] as const), "usual"),
    ],
    (kV, by, shape) => figure(cableTest(kV, by, shape === "usual" ? usualCableWave[by] : shape)),
  );
}
