import { CT_QUANTITIES, ctLimit } from "../standards/ctLimit";
import { figure } from "./figure";
import { named, optional, quantity as percentOf, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum CtlimitQuantity {
  /** Ratio error, ±% */
  ratio = "ratio",
  /** Phase displacement, ±min */
  phase = "phase",
  /** Composite error, % */
  composite = "composite",
  /** Ratio error beyond which the class is missed for certain, ±% */
  wrong = "wrong",
  /** Turns ratio error of PX, PXR and TPS, ±% */
  turns = "turns",
}

/**
 * Greatest error that the accuracy class of a current transformer allows.
 * @customfunction CTLIMIT
 * @param accuracy Accuracy class as the plate writes it, such as 0.5, 0.2S, 5P20, PX, C200 or 0.3B-0.5
 * @param percent Primary current, percent of rated
 * @param [quantity] ratio (±%), phase (±min), composite (%), wrong (±%) or turns (±%); ratio if left out
 * @returns ±% or ±min
 * @example =GEAR.CTLIMIT("0.5", 20) // 0.75
 * @example =GEAR.CTLIMIT("0.5", 60, "phase") // 37.5
 * @example =GEAR.CTLIMIT("0.3B-0.5", 10) // 0.6
 * @example =GEAR.CTLIMIT("C200", 100) // 3
 * @refuses =GEAR.CTLIMIT("0.7", 100)
 * @refuses =GEAR.CTLIMIT("0.5", 150)
 */
export function ctlimit(
  accuracy: string,
  percent: unknown[][],
  quantity?: CtlimitQuantity,
): unknown[][] {
  return spill(
    [
      named("Accuracy class", accuracy),
      percentOf("Percent of rated current", percent, "%"),
      optional(word("Quantity", quantity, CT_QUANTITIES), "ratio"),
    ],
    (name, at, of) => figure(ctLimit(name, at, of)),
  );
}
