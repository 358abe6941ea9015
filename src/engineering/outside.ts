import type { InputName } from "../messages/inputName";
import { type Refusal, refuse } from "../quantities/result";

/**
 * Refuses a quantity that is no number or lies outside the range that a formula holds for.
 *
 * @param what the quantity, by its name in the messages
 * @returns nothing where the value is inside, ends included; else `wrong` for no number, `range` for the rest
 * @example outside("Relative humidity", 55, 0, 100, "%") // undefined
 */
export const outside = (
  what: InputName,
  value: number,
  least: number,
  most: number,
  unit: string,
): Refusal | undefined => {
  if (Number.isNaN(value))
    return refuse("wrong", (text) =>
      text.engineering.notNumberFrom(text.name(what), least, most, unit),
    );
  return value >= least && value <= most
    ? undefined
    : refuse("range", (text) =>
        text.engineering.outside(text.name(what), least, most, unit, value),
      );
};
