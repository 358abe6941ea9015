import { type Refusal, refuse } from "../quantities/result";

/**
 * Refuses a quantity that is no number or lies outside the range that a formula holds for.
 *
 * @param what the quantity's name as a sentence begins, such as "Relative humidity"
 * @returns nothing where the value is inside, ends included; else `wrong` for no number, `range` for the rest
 * @example outside("Relative humidity", 55, 0, 100, "%") // undefined
 */
export const outside = (
  what: string,
  value: number,
  least: number,
  most: number,
  unit: string,
): Refusal | undefined => {
  const span = `from ${least} to ${most}${unit && ` ${unit}`}`;
  if (Number.isNaN(value)) return refuse("wrong", `${what} must be a number ${span}.`);
  return value >= least && value <= most
    ? undefined
    : refuse("range", `${what} must be ${span}; ${value} is outside.`);
};
