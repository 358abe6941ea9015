import { excitingCurrent } from "../engineering/excitingCurrent";
import { bounded } from "../quantities/reading/bounded";
import { answer } from "../quantities/result";
import { gather } from "./gather";
import { quantity } from "./inputs";
import { spill } from "./spill";

/**
 * Exciting current of a current transformer at a voltage, from its measured excitation curve, A; a bound such as "> 20" beyond its last point.
 * @customfunction EXCITING
 * @param volts Voltages, V, rising or falling throughout
 * @param amps Exciting currents, A, one for each voltage
 * @param at Voltage asked for, V
 * @returns A, or a bound as text
 * @example =GEAR.EXCITING({100;200}, {0.01;0.02}, 150) // 0.015
 * @example =GEAR.EXCITING({100;110}, {5;10}, 220) // "> 20"
 * @refuses =GEAR.EXCITING({100;90;95}, {10;5;7}, 92)
 */
export function exciting(volts: unknown[][], amps: unknown[][], at: unknown[][]): unknown {
  const [[asked] = []] = spill([quantity("Voltage", [[at].flat(2)], "V")], answer);
  return typeof asked === "number"
    ? gather(
        [quantity("Voltages", volts, "V"), quantity("Currents", amps, "A")],
        (voltages = [], currents = []) => {
          const found = excitingCurrent(voltages, currents, asked);
          return found.ok ? answer(bounded(found.value)) : found;
        },
      )
    : asked;
}
