import { CT_QUANTITIES, ctLimit } from "../standards/ctLimit";
import { CT_CLASSES } from "../standards/transformerClasses";
import { figure } from "./figure";
import { optional, quantity as percentOf, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum CtlimitAccuracy {
  /** Class 0.1 */
  class01 = "0.1",
  /** Class 0.2 */
  class02 = "0.2",
  /** Class 0.5 */
  class05 = "0.5",
  /** Class 1 */
  class1 = "1",
  /** Class 0.2S */
  class02S = "0.2S",
  /** Class 0.5S */
  class05S = "0.5S",
  /** Class 3 */
  class3 = "3",
  /** Class 5 */
  class5 = "5",
  /** Class 5P */
  class5P = "5P",
  /** Class 10P */
  class10P = "10P",
}

/** @customenum {string} */
export enum CtlimitQuantity {
  /** Ratio error, ±% */
  ratio = "ratio",
  /** Phase displacement, ±min */
  phase = "phase",
  /** Composite error, % */
  composite = "composite",
}

/**
 * Greatest error that the accuracy class of a current transformer allows.
 * @customfunction CTLIMIT
 * @param accuracy Accuracy class, such as 0.5, 0.2S or 5P
 * @param percent Primary current, percent of rated
 * @param [quantity] ratio (±%), phase (±min) or composite (%); ratio if left out
 * @returns ±% or ±min
 * @example =GEAR.CTLIMIT("0.5", 20) // 0.75
 * @example =GEAR.CTLIMIT("0.5", 60, "phase") // 37.5
 * @refuses =GEAR.CTLIMIT("0.7", 100)
 * @refuses =GEAR.CTLIMIT("0.5", 150)
 */
export function ctlimit(
  accuracy: CtlimitAccuracy,
  percent: unknown[][],
  quantity?: CtlimitQuantity,
): unknown[][] {
  return spill(
    [
      word("Accuracy class", withoutFactor(accuracy), CT_CLASSES),
      percentOf("Percent of rated current", percent, "%"),
      optional(word("Quantity", quantity, CT_QUANTITIES), "ratio"),
    ],
    (name, at, of) => figure(ctLimit(name, at, of)),
  );
}

/** 5P of 5P20: the accuracy limit factor on the plate is no part of the class. */
const withoutFactor = (accuracy: unknown): unknown =>
  typeof accuracy === "string" ? accuracy.replace(/^(\s*(?:5|10)P)\d+\s*$/i, "$1") : accuracy;
