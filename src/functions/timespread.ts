import { timeSpread } from "../engineering/timeSpread";
import { gather } from "./gather";
import { quantity } from "./inputs";

/**
 * Difference between the slowest and the fastest pole of one operation, ms.
 * @customfunction TIMESPREAD
 * @param range Two or more times, ms; blanks are passed over
 * @returns ms
 * @example =GEAR.TIMESPREAD({45.2;46.1;45.6}) // 0.9
 * @refuses =GEAR.TIMESPREAD({45.2})
 */
export function timespread(range: unknown[][]): unknown {
  return gather([quantity("Times", range, "ms")], (times = []) => timeSpread(times));
}
