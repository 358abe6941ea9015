import { answer, type Result } from "../quantities/result";
import { cableTests, usualCableWave } from "../standards/cableTest";
import { PURPOSES } from "../standards/editions";
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

/** @customenum {string} */
export enum CabletestPurpose {
  /** A new cable */
  acceptance = "acceptance",
  /** A cable in service */
  maintenance = "maintenance",
}

/**
 * Withstand voltage of a medium-voltage cable after laying, phase to earth, kV. It follows from the cable's own U0 and is never taken from another row.
 * @customfunction CABLETEST
 * @param ratedkV Rated voltage of the cable, kV
 * @param [basis] IEC or NETA; IEC if left out
 * @param [wave] AC, DC or VLF; AC for IEC and VLF for NETA if left out
 * @param [purpose] acceptance or maintenance (NETA); acceptance if left out
 * @param [u0kV] Rated voltage to earth U0, kV (IEC); by the rated voltage if left out
 * @returns kV, rms for AC and VLF
 * @example =GEAR.CABLETEST(12, "IEC", "DC") // 24
 * @example =GEAR.CABLETEST(11, "IEC", "DC") // 25.4
 * @example =GEAR.CABLETEST(15, "NETA") // 21
 * @example =GEAR.CABLETEST(15, "NETA", "VLF", "maintenance") // 16
 * @refuses =GEAR.CABLETEST(40.5)
 * @refuses =GEAR.CABLETEST(13.8)
 * @refuses =GEAR.CABLETEST(15, "NETA", "DC")
 */
export function cabletest(
  ratedkV: unknown[][],
  basis?: CabletestBasis,
  wave?: CabletestWave,
  purpose?: CabletestPurpose,
  u0kV?: unknown[][],
): unknown[][] {
  return spill(
    [
      quantity("Rated voltage", ratedkV, "kV"),
      optional(basisOf(basis), "IEC"),
      optional(word("Wave", wave, ["AC", "DC", "VLF", "usual"] as const), "usual"),
      optional(word("Purpose", purpose, PURPOSES), "acceptance"),
      optional(quantity("U0", u0kV, "kV"), UNKNOWN),
    ],
    (kV, by, shape, what, u0) => {
      const found = cableTests(
        { ratedkV: kV, u0kV: u0 === UNKNOWN ? undefined : u0 },
        shape === "usual" ? usualCableWave[by] : shape,
        { basis: by, purpose: what },
      );
      const [first] = found.ok ? found.value : [];
      return first ? answer(first.kV.value) : (found as Result<never>);
    },
  );
}

/** Stands for a U0 that is not given. */
const UNKNOWN = 0;
