import { contactCorrect } from "../engineering/contactCorrect";
import { carry } from "./carry";
import { optional, quantity, reading, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum ContactcorrectMetal {
  /** Copper */
  copper = "copper",
  /** Aluminium */
  aluminium = "aluminium",
}

/**
 * Resistance of a contact, joint or winding at the base temperature, µΩ; a number keeps its own unit, so that the Ω of a winding stay Ω. A bound stays one: "< 0.1 mΩ" gives text such as "< 96.2193".
 * @customfunction CONTACTCORRECT
 * @param microhm Measured resistance, µΩ: a number, or text as written, such as "0.045 mΩ"
 * @param temperature Temperature of the metal, °C
 * @param [metal] copper or aluminium; copper if left out
 * @param [base] Temperature to correct to, °C; 20 if left out
 * @returns µΩ
 * @example =GEAR.CONTACTCORRECT(45, 30) // 43.3
 * @example =GEAR.CONTACTCORRECT(1.21, 20, "copper", 75) // 1.4715
 * @example =GEAR.CONTACTCORRECT("< 0.1 mΩ", 30) // "< 96.2193"
 * @refuses =GEAR.CONTACTCORRECT(-45, 30)
 * @refuses =GEAR.CONTACTCORRECT(45, 300)
 */
export function contactcorrect(
  microhm: unknown[][],
  temperature: unknown[][],
  metal?: ContactcorrectMetal,
  base?: unknown[][],
): unknown[][] {
  return spill(
    [
      reading("Resistance", microhm, "µΩ"),
      quantity("Temperature", temperature, "°C"),
      optional(word("Metal", metal, ["copper", "aluminium"] as const), "copper"),
      optional(quantity("Base temperature", base, "°C"), 20),
    ],
    ({ value, bound }, at, of, to) => carry(contactCorrect(value, at, of, to), bound),
  );
}
