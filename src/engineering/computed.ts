import { answer, type Result, refuse } from "../quantities/result";

/**
 * Hands on what a formula gave, unless it grew beyond what a number can hold.
 *
 * @returns the value; `range` where it is infinite or no number
 * @example computed(1200 * 2.8) // 3360
 */
export const computed = (value: number): Result<number> =>
  Number.isFinite(value)
    ? answer(value)
    : refuse("range", (text) => text.engineering.beyondNumbers);
