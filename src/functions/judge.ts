import { type Bounded, readBounded } from "../quantities/bounded";
import { readUnit } from "../quantities/readUnit";
import { answer, type Result, refuse } from "../quantities/result";
import type { Unit } from "../quantities/units";
import { judge as judgeValue, SENSES } from "../standards/judge";
import type { Cell } from "./excel";
import { optional, pure, reading, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum JudgeSense {
  /** The value is to be the limit or more */
  least = "least",
  /** The value is to be the limit or less */
  most = "most",
  /** The magnitude is to be the limit or less */
  within = "within",
  /** The value is to be the limit itself */
  equal = "equal",
}

/**
 * Judges a value against its limit: Pass, Fail, Missing or Inconclusive. A bound such as "> 3160000" judges only where it decides.
 * @customfunction JUDGE
 * @param value Value in the limit's unit, or a bound as text, such as "> 3160000"
 * @param limit Limit; left blank, the result is Inconclusive
 * @param [sense] least, most, within or equal; least if left out
 * @param [tolerance] Fraction of the limit granted in the value's favour; 0 if left out
 * @param [unit] Unit of the limit; given, the value may be text as written on site, such as "48 lbf·ft"; a number or bound alone if left out
 * @returns Pass, Fail, Missing or Inconclusive
 * @example =GEAR.JUDGE(5200, 5000) // "Pass"
 * @example =GEAR.JUDGE("> 2000", 5000) // "Inconclusive"
 * @example =GEAR.JUDGE(52, 50, "most", 0.05) // "Pass"
 * @example =GEAR.JUDGE("5 kV", 5000, "least", 0, "V") // "Pass"
 * @refuses =GEAR.JUDGE("OL", 5000)
 */
export function judge(
  value: unknown[][],
  limit: unknown[][],
  sense?: JudgeSense,
  tolerance?: unknown[][],
  unit?: string,
): unknown[][] {
  return spill(
    [
      optional({ name: "Value", cells: value, read: answer }, undefined),
      optional(pure("Limit", limit), undefined),
      optional(word("Sense", sense, SENSES), "least"),
      optional(pure("Tolerance", tolerance), 0),
      optional({ name: "Unit", cells: unit, read: (cell) => readUnit(String(cell)) }, undefined),
    ],
    (cell, bar, way, grace, of) => {
      const found = valueIn(cell, of);
      return found.ok ? answer(judgeValue(found.value, bar, way, grace)) : found;
    },
  );
}

/** A number or a bound as a computed cell shows it; with a unit, also text as written on site. */
const valueIn = (cell: unknown, unit: Unit | undefined): Result<Bounded | undefined> => {
  if (cell === undefined) return answer(undefined);
  const plain = readBounded(cell);
  const found =
    plain.ok || unit === undefined ? plain : reading("Value", cell, unit).read(cell as Cell);
  return found.ok ? found : refuse(found.kind, `Value: ${found.reason}`);
};
