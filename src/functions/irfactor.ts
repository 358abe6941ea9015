import { INSULATION_METHODS, insulationFactor } from "../engineering/insulationFactor";
import { optional, quantity, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum IrfactorMethod {
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
 * Factor that brings an insulation resistance to its base temperature.
 * @customfunction IRFACTOR
 * @param temperature Temperature of the insulation, °C, -10 to 105
 * @param [method] solid, oil, halving or none; solid if left out
 * @param [base] Temperature to correct to, °C; 20 if left out
 * @returns Factor, a pure number
 * @example =GEAR.IRFACTOR(35, "oil") // 2.8
 * @refuses =GEAR.IRFACTOR(-20)
 */
export function irfactor(
  temperature: unknown[][],
  method?: IrfactorMethod,
  base?: unknown[][],
): unknown[][] {
  return spill(
    [
      quantity("Temperature", temperature, "°C"),
      optional(word("Method", method, INSULATION_METHODS), "solid"),
      optional(quantity("Base temperature", base, "°C"), 20),
    ],
    insulationFactor,
  );
}
