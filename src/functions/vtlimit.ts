import { VT_QUANTITIES, vtLimit } from "../standards/vtLimit";
import { figure } from "./figure";
import { named, optional, quantity as percentOf, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum VtlimitQuantity {
  /** Ratio error, ±% */
  ratio = "ratio",
  /** Phase displacement, ±min */
  phase = "phase",
  /** Ratio error beyond which the class is missed for certain, ±% */
  wrong = "wrong",
}

/**
 * Greatest error that the accuracy class of a voltage transformer allows.
 * @customfunction VTLIMIT
 * @param accuracy Accuracy class as the plate writes it, such as 0.5, 3P, 0.5/3P or 0.3WXYZ
 * @param percent Primary voltage, percent of rated
 * @param [quantity] ratio (±%), phase (±min) or wrong (±%); ratio if left out
 * @returns ±% or ±min
 * @example =GEAR.VTLIMIT("3P", 100, "phase") // 120
 * @refuses =GEAR.VTLIMIT("0.5", 50)
 */
export function vtlimit(
  accuracy: string,
  percent: unknown[][],
  quantity?: VtlimitQuantity,
): unknown[][] {
  return spill(
    [
      named("Accuracy class", accuracy),
      percentOf("Percent of rated voltage", percent, "%"),
      optional(word("Quantity", quantity, VT_QUANTITIES), "ratio"),
    ],
    (name, at, of) => figure(vtLimit(name, at, of)),
  );
}
