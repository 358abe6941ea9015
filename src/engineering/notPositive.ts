import type { InputName } from "../messages/inputName";
import { type Refusal, refuse } from "../quantities/result";

/**
 * Refuses a quantity that is no number, or not above zero.
 *
 * @param what the quantity, by its name in the messages
 * @returns nothing for a finite number above zero; else `wrong` for no number, `range` for the rest
 * @example notPositive("Test voltage", 28, "kV") // undefined
 */
export const notPositive = (what: InputName, value: number, unit: string): Refusal | undefined => {
  if (Number.isNaN(value))
    return refuse("wrong", (text) => text.engineering.notNumberAbove(text.name(what), unit));
  return value > 0 && value < Number.POSITIVE_INFINITY
    ? undefined
    : refuse("range", (text) => text.engineering.notAbove(text.name(what), unit, value));
};
