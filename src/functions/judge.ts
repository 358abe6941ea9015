import { readBounded } from "../quantities/bounded";
import { answer } from "../quantities/result";
import { judge as judgeValue, SENSES } from "../standards/judge";
import { optional, pure, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum JudgeSense {
  /** The value is to be the limit or more */
  least = "least",
  /** The value is to be the limit or less */
  most = "most",
  /** The magnitude is to be the limit or less */
  within = "within",
}

/**
 * Judges a value against its limit: Pass, Fail, Missing or Inconclusive. A bound such as "> 3160000" judges only where it decides.
 * @customfunction JUDGE
 * @param value Value in the limit's unit, or a bound as text, such as "> 3160000"
 * @param limit Limit; left blank, the result is Inconclusive
 * @param [sense] least, most or within; least if left out
 * @param [tolerance] Fraction of the limit granted in the value's favour; 0 if left out
 * @returns Pass, Fail, Missing or Inconclusive
 * @example =GEAR.JUDGE(5200, 5000) // "Pass"
 * @example =GEAR.JUDGE("> 2000", 5000) // "Inconclusive"
 * @example =GEAR.JUDGE(52, 50, "most", 0.05) // "Pass"
 * @refuses =GEAR.JUDGE("OL", 5000)
 */
export function judge(
  value: unknown[][],
  limit: unknown[][],
  sense?: JudgeSense,
  tolerance?: unknown[][],
): unknown[][] {
  return spill(
    [
      optional({ name: "Value", cells: value, read: readBounded }, undefined),
      optional(pure("Limit", limit), undefined),
      optional(word("Sense", sense, SENSES), "least"),
      optional(pure("Tolerance", tolerance), 0),
    ],
    (found, bar, way, grace) => answer(judgeValue(found, bar, way, grace)),
  );
}
