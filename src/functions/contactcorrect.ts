import { contactCorrect } from "../engineering/contactCorrect";
import { optional, quantity, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum ContactcorrectMetal {
  /** Copper */
  copper = "copper",
  /** Aluminium */
  aluminium = "aluminium",
}

/**
 * Resistance of a contact, joint or winding at the base temperature, µΩ.
 * @customfunction CONTACTCORRECT
 * @param microhm Measured resistance: a number in µΩ, or text as written, such as "0.045 mΩ"
 * @param temperature Temperature of the metal, °C
 * @param [metal] copper or aluminium; copper if left out
 * @param [base] Temperature to correct to, °C; 20 if left out
 * @returns µΩ
 */
export function contactcorrect(
  microhm: unknown[][],
  temperature: unknown[][],
  metal?: ContactcorrectMetal,
  base?: unknown[][],
): unknown[][] {
  return spill(
    [
      quantity("Resistance", microhm, "µΩ"),
      quantity("Temperature", temperature, "°C"),
      optional(word("Metal", metal, ["copper", "aluminium"] as const), "copper"),
      optional(quantity("Base temperature", base, "°C"), 20),
    ],
    contactCorrect,
  );
}
