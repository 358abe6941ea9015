import { GAS_REFERENCES, gasPressure } from "../engineering/gasPressure";
import { optional, quantity, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum GaspressureReference {
  /** Above the atmosphere */
  gauge = "gauge",
  /** Absolute */
  absolute = "absolute",
}

/**
 * SF6 pressure brought to another temperature at constant density, MPa. The answer to a gauge reading is above the standard atmosphere of 101.3 kPa.
 * @customfunction GASPRESSURE
 * @param pressure Pressure reading, MPa: a number, or text such as "6.5 bar"
 * @param temperature Gas temperature, °C
 * @param [to] Temperature to bring it to, °C; 20 if left out
 * @param [reference] gauge or absolute; gauge if left out
 * @param [barometer] Atmosphere when a gauge was read, kPa; 101.3 if left out
 * @returns MPa, gauge or absolute as the reading
 * @example =GEAR.GASPRESSURE(0.6111, 5, 20, "gauge", 93.2) // 0.65
 * @refuses =GEAR.GASPRESSURE(0.9, -45)
 * @refuses =GEAR.GASPRESSURE(5, 20)
 */
export function gaspressure(
  pressure: unknown[][],
  temperature: unknown[][],
  to?: unknown[][],
  reference?: GaspressureReference,
  barometer?: unknown[][],
): unknown[][] {
  return spill(
    [
      quantity("Pressure", pressure, "MPa"),
      quantity("Gas temperature", temperature, "°C"),
      optional(quantity("Temperature to bring it to", to, "°C"), 20),
      optional(word("Reference", reference, GAS_REFERENCES), "gauge"),
      optional(quantity("Barometer", barometer, "kPa"), 101.3),
    ],
    (read, celsius, target, kind, kPa) =>
      gasPressure({
        pressure: read,
        temperature: celsius,
        to: target,
        reference: kind,
        barometer: kPa,
      }),
  );
}
