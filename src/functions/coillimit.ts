import { answer } from "../quantities/result";
import { coilRange } from "../standards/coilRange";
import { basisOf, optional, quantity, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum CoillimitOperation {
  /** Closing coil */
  closing = "closing",
  /** Shunt opening release */
  opening = "opening",
}

/** @customenum {string} */
export enum CoillimitEnd {
  /** Least voltage to work at */
  least = "least",
  /** Greatest voltage to work at */
  most = "most",
  /** Least voltage to work at, the lower where published tables differ */
  lowest = "lowest",
}

/** @customenum {string} */
export enum CoillimitWave {
  /** Direct voltage */
  DC = "DC",
  /** Power frequency */
  AC = "AC",
}

/** @customenum {string} */
export enum CoillimitBasis {
  /** IEC 62271 and companions */
  IEC = "IEC",
  /** ANSI/NETA and IEEE */
  NETA = "NETA",
}

/**
 * Least or greatest voltage that a closing coil or shunt release must work at, V.
 * @customfunction COILLIMIT
 * @param ratedV Rated control voltage, V
 * @param operation closing or opening
 * @param end least or most, or lowest: the least voltage, the lower one where published tables differ
 * @param [wave] DC or AC; DC if left out
 * @param [basis] IEC or NETA; IEC if left out
 * @returns V
 * @example =GEAR.COILLIMIT(110, "opening", "least") // 77
 * @example =GEAR.COILLIMIT(120, "closing", "least", "AC", "NETA") // 104
 * @refuses =GEAR.COILLIMIT(110, "closing", "least", "DC", "NETA")
 * @refuses =GEAR.COILLIMIT(0, "closing", "least")
 */
export function coillimit(
  ratedV: unknown[][],
  operation: CoillimitOperation,
  end: CoillimitEnd,
  wave?: CoillimitWave,
  basis?: CoillimitBasis,
): unknown[][] {
  return spill(
    [
      quantity("Rated control voltage", ratedV, "V"),
      word("Operation", operation, ["closing", "opening"] as const),
      word("End", end, ["least", "most", "lowest"] as const),
      optional(word("Wave", wave, ["AC", "DC"] as const), "DC"),
      optional(basisOf(basis), "IEC"),
    ],
    (volts, does, side, supply, by) => {
      const range = coilRange(volts, { operation: does, wave: supply, basis: by });
      if (!range.ok) return range;
      const { least, most, lowest = least } = range.value.value;
      return answer({ least, most, lowest }[side]);
    },
  );
}
