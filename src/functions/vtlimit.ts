import { VT_CLASSES } from "../standards/transformerClasses";
import { VT_QUANTITIES, vtLimit } from "../standards/vtLimit";
import { figure } from "./figure";
import { optional, quantity as percentOf, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum VtlimitAccuracy {
  /** Class 0.2 */
  class02 = "0.2",
  /** Class 0.5 */
  class05 = "0.5",
  /** Class 1 */
  class1 = "1",
  /** Class 3P */
  class3P = "3P",
  /** Class 6P */
  class6P = "6P",
}

/** @customenum {string} */
export enum VtlimitQuantity {
  /** Ratio error, ±% */
  ratio = "ratio",
  /** Phase displacement, ±min */
  phase = "phase",
}

/**
 * Greatest error that the accuracy class of a voltage transformer allows.
 * @customfunction VTLIMIT
 * @param accuracy Accuracy class, such as 0.5 or 3P
 * @param percent Primary voltage, percent of rated
 * @param [quantity] ratio (±%) or phase (±min); ratio if left out
 * @returns ±% or ±min
 * @example =GEAR.VTLIMIT("3P", 100, "phase") // 120
 * @refuses =GEAR.VTLIMIT("0.5", 50)
 */
export function vtlimit(
  accuracy: VtlimitAccuracy,
  percent: unknown[][],
  quantity?: VtlimitQuantity,
): unknown[][] {
  return spill(
    [
      word("Accuracy class", accuracy, VT_CLASSES),
      percentOf("Percent of rated voltage", percent, "%"),
      optional(word("Quantity", quantity, VT_QUANTITIES), "ratio"),
    ],
    (name, at, of) => figure(vtLimit(name, at, of)),
  );
}
