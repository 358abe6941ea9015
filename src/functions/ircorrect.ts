import { insulationCorrect } from "../engineering/insulationCorrect";
import { INSULATION_METHODS } from "../engineering/insulationFactor";
import { carry } from "./carry";
import { optional, quantity, reading as resistance, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum IrcorrectMethod {
  /** Solid insulation, tabulated */
  solid = "solid",
  /** Oil-filled, tabulated */
  oil = "oil",
  /** Half the resistance for every 10 K */
  halving = "halving",
  /** No correction */
  none = "none",
}

/**
 * Insulation resistance at the base temperature, MΩ. An over-range reading gives text such as "> 3160000", never a number.
 * @customfunction IRCORRECT
 * @param reading Insulation resistance, MΩ: a number, or text as written, such as "5.2 GΩ" or "> 2 TΩ"
 * @param temperature Temperature of the insulation, °C, -10 to 105
 * @param [method] solid, oil, halving or none; solid if left out
 * @param [base] Temperature to correct to, °C; 20 if left out
 * @returns Corrected resistance, MΩ
 * @example =GEAR.IRCORRECT(1200, 35, "oil") // 3360
 * @example =GEAR.IRCORRECT("> 2 TΩ", 30) // "> 3160000"
 * @refuses =GEAR.IRCORRECT(-5, 20)
 * @refuses =GEAR.IRCORRECT(100, 120)
 * @refuses =GEAR.IRCORRECT(100, 20, "paper")
 */
export function ircorrect(
  reading: unknown[][],
  temperature: unknown[][],
  method?: IrcorrectMethod,
  base?: unknown[][],
): unknown[][] {
  return spill(
    [
      resistance("Reading", reading, "MΩ"),
      quantity("Temperature", temperature, "°C"),
      optional(word("Method", method, INSULATION_METHODS), "solid"),
      optional(quantity("Base temperature", base, "°C"), 20),
    ],
    ({ value, bound }, at, how, to) => carry(insulationCorrect(value, at, how, to), bound),
  );
}
