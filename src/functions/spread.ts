import { spread as spreadOf } from "../engineering/spread";
import { gather } from "./gather";
import { pure } from "./inputs";

/**
 * Greatest departure from the lowest value, as a fraction of the lowest.
 * @customfunction SPREAD
 * @param range Two or more values in one unit; blanks are passed over
 * @returns Fraction, 0 or more
 * @example =GEAR.SPREAD({50;60;76}) // 0.52
 * @refuses =GEAR.SPREAD({50})
 * @refuses =GEAR.SPREAD({50;0})
 */
export function spread(range: unknown[][]): unknown {
  return gather([pure("Values", range)], (values = []) => spreadOf(values));
}
