import { type Refusal, refuse } from "../quantities/result";

/**
 * Refuses a quantity that is no number, or below zero.
 *
 * @param what the quantity's name as a sentence begins, such as "Voltage drop"
 * @returns nothing for a finite number of 0 or more; else `wrong` for no number, `range` for the rest
 * @example notNegative("Voltage drop", 0, "V") // undefined
 */
export const notNegative = (what: string, value: number, unit: string): Refusal | undefined => {
  const wanted = `must be 0${unit && ` ${unit}`} or more`;
  if (Number.isNaN(value)) return refuse("wrong", `${what} must be a number and ${wanted}.`);
  return value >= 0 && value < Number.POSITIVE_INFINITY
    ? undefined
    : refuse("range", `${what} ${wanted}; ${value} is not.`);
};
