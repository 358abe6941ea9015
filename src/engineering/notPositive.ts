import { type Refusal, refuse } from "../quantities/result";

/**
 * Refuses a quantity that is no number, or not above zero.
 *
 * @param what the quantity's name as a sentence begins, such as "Test voltage"
 * @returns nothing for a finite number above zero; else `wrong` for no number, `range` for the rest
 * @example notPositive("Test voltage", 28, "kV") // undefined
 */
export const notPositive = (what: string, value: number, unit: string): Refusal | undefined => {
  const wanted = `must be above 0${unit && ` ${unit}`}`;
  if (Number.isNaN(value)) return refuse("wrong", `${what} must be a number and ${wanted}.`);
  return value > 0 && value < Number.POSITIVE_INFINITY
    ? undefined
    : refuse("range", `${what} ${wanted}; ${value} is not.`);
};
