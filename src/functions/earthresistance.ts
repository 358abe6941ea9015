import { earthResistance } from "../engineering/earthResistance";
import { quantity } from "./inputs";
import { spill } from "./spill";

/**
 * Resistance of an earthing connection measured with four wires, mΩ.
 * @customfunction EARTHRESISTANCE
 * @param amps Test current, A
 * @param volts Drop along the connection, V
 * @returns mΩ
 */
export function earthresistance(amps: unknown[][], volts: unknown[][]): unknown[][] {
  return spill(
    [quantity("Test current", amps, "A"), quantity("Voltage drop", volts, "V")],
    earthResistance,
  );
}
