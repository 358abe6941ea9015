import { earthResistance } from "../engineering/earthResistance";
import { quantity } from "./inputs";
import { spill } from "./spill";

/**
 * Resistance of an earthing connection measured with four wires, mΩ.
 * @customfunction EARTHRESISTANCE
 * @param amps Test current, A
 * @param volts Drop along the connection, V
 * @returns mΩ
 * @example =GEAR.EARTHRESISTANCE(30, 0.15) // 5
 * @refuses =GEAR.EARTHRESISTANCE(0, 0.15)
 */
export function earthresistance(amps: unknown[][], volts: unknown[][]): unknown[][] {
  return spill(
    [quantity("Test current", amps, "A"), quantity("Voltage drop", volts, "V")],
    earthResistance,
  );
}
