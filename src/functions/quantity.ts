import { readUnit } from "../quantities/reading/readUnit";
import { answer } from "../quantities/result";
import { quantity as exact } from "./inputs";
import { spill } from "./spill";

/**
 * A quantity as written, as a number in a unit. A bound such as "> 2 TΩ" is no number and gives an error.
 * @customfunction QUANTITY
 * @param text Quantity as written, such as "48 lbf·ft", "71 1/2 in" or "50 °F", or a number in the unit
 * @param unit Unit of the answer, such as "N·m", "mm" or "°C"
 * @returns A number in the unit
 * @example =GEAR.QUANTITY("50 °F", "°C") // 10
 * @example =GEAR.QUANTITY("0.9 mV", "V") // 0.0009
 * @refuses =GEAR.QUANTITY("5 kV", "°C")
 * @refuses =GEAR.QUANTITY("> 2 kV", "V")
 */
export function quantity(text: unknown[][], unit: string): unknown[][] {
  return spill(
    [
      { name: "Text", cells: text, read: answer },
      { name: "Unit", cells: unit, read: (cell) => readUnit(String(cell)) },
    ],
    (cell, of) => exact("Text", text, of).read(cell),
  );
}
