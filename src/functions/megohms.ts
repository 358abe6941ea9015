import { convert } from "../quantities/convert";
import { answer } from "../quantities/result";
import { optional, quantity, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum MegohmsUnit {
  /** 10¹² Ω */
  teraohm = "TΩ",
  /** 10⁹ Ω */
  gigaohm = "GΩ",
  /** 10⁶ Ω */
  megohm = "MΩ",
  /** 10³ Ω */
  kilohm = "kΩ",
  /** 1 Ω */
  ohm = "Ω",
}

/**
 * A resistance as written, as a number in MΩ. A bound such as "> 2 TΩ" is no number and gives an error.
 * @customfunction MEGOHMS
 * @param text Resistance as written, such as "5.2 GΩ" or "800 kOhm", or a number
 * @param [unit] Unit where none is written; MΩ if left out
 * @returns MΩ
 * @example =GEAR.MEGOHMS("5.2 GΩ") // 5200
 * @example =GEAR.MEGOHMS(5.2, "GΩ") // 5200
 * @refuses =GEAR.MEGOHMS("> 2 TΩ")
 * @refuses =GEAR.MEGOHMS("1,250")
 */
export function megohms(text: unknown[][], unit?: MegohmsUnit): unknown[][] {
  return spill(
    [
      { name: "Text", cells: text, read: answer },
      optional(word("Unit", unit, ["TΩ", "GΩ", "MΩ", "kΩ", "Ω"] as const), "MΩ"),
    ],
    (cell, assumed) => {
      const found = quantity("Text", text, assumed).read(cell);
      return found.ok ? convert(found.value, assumed, "MΩ") : found;
    },
  );
}
