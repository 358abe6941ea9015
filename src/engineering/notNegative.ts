import type { InputName } from "../messages/inputName";
import { type Refusal, refuse } from "../quantities/result";

/**
 * Refuses a quantity that is no number, or below zero.
 *
 * @param what the quantity, by its name in the messages
 * @returns nothing for a finite number of 0 or more; else `wrong` for no number, `range` for the rest
 * @example notNegative("Voltage drop", 0, "V") // undefined
 */
export const notNegative = (what: InputName, value: number, unit: string): Refusal | undefined => {
  if (Number.isNaN(value))
    return refuse("wrong", (text) => text.engineering.notNumberOrMore(text.name(what), unit));
  return value >= 0 && value < Number.POSITIVE_INFINITY
    ? undefined
    : refuse("range", (text) => text.engineering.negative(text.name(what), unit, value));
};
