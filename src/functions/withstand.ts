import { withstandVoltage } from "../standards/withstandVoltage";
import { figure } from "./figure";
import { basisOf, optional, quantity, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum WithstandBasis {
  /** IEC 62271 and companions */
  IEC = "IEC",
  /** ANSI/NETA and IEEE */
  NETA = "NETA",
}

/** @customenum {string} */
export enum WithstandPlace {
  /** After erection, on site */
  site = "site",
  /** At the factory */
  factory = "factory",
}

/** @customenum {string} */
export enum WithstandWave {
  /** Power frequency, kV rms */
  AC = "AC",
  /** Direct voltage, kV */
  DC = "DC",
}

/** @customenum {string} */
export enum WithstandPart {
  /** Main circuit, to earth and between phases */
  main = "main",
  /** Across the isolating distance */
  isolating = "isolating",
  /** Control wiring */
  control = "control",
}

/**
 * Voltage of a one-minute withstand test on metal-clad switchgear, kV. It is never taken from another row: exact ratings, or the names 5, 25 and 35 kV class.
 * @customfunction WITHSTAND
 * @param ratedkV Rated voltage of the switchgear, kV
 * @param [basis] IEC or NETA; IEC if left out
 * @param [place] site or factory; site if left out
 * @param [wave] AC or DC; AC if left out
 * @param [part] main, isolating or control; main if left out
 * @returns kV, rms for AC
 * @example =GEAR.WITHSTAND(12) // 22.4
 * @example =GEAR.WITHSTAND(15, "NETA", "site", "DC") // 37.5
 * @example =GEAR.WITHSTAND(5, "NETA") // 14
 * @refuses =GEAR.WITHSTAND(100)
 * @refuses =GEAR.WITHSTAND(13.8)
 * @refuses =GEAR.WITHSTAND(12, "IEC", "site", "DC")
 * @refuses =GEAR.WITHSTAND(-12)
 */
export function withstand(
  ratedkV: unknown[][],
  basis?: WithstandBasis,
  place?: WithstandPlace,
  wave?: WithstandWave,
  part?: WithstandPart,
): unknown[][] {
  return spill(
    [
      quantity("Rated voltage", ratedkV, "kV"),
      optional(basisOf(basis), "IEC"),
      optional(word("Place", place, ["factory", "site"] as const), "site"),
      optional(word("Wave", wave, ["AC", "DC"] as const), "AC"),
      optional(word("Part", part, ["main", "isolating", "control"] as const), "main"),
    ],
    (kV, by, where, shape, of) =>
      figure(withstandVoltage(kV, { basis: by, place: where, wave: shape, part: of })),
  );
}
