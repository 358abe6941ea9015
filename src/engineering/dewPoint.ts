import type { Result } from "../quantities/result";
import { computed } from "./computed";
import { notPositive } from "./notPositive";
import { outside } from "./outside";

/** Magnus coefficients over water, −45 °C to 60 °C (read in a sensor maker's note); the second in °C. */
const [A, B] = [17.62, 243.12];

/**
 * Dew point of the air by the Magnus formula over water.
 *
 * @param temperature of the air, °C, −45 to 60
 * @param humidity relative humidity, %, above 0, at most 100
 * @returns °C; `range` outside
 * @example dewPoint(25, 10) // -8.77
 */
export const dewPoint = (temperature: number, humidity: number): Result<number> => {
  const load = Math.log(humidity / 100) + (A * temperature) / (B + temperature);
  return (
    outside("Air temperature", temperature, -45, 60, "°C") ??
    notPositive("Relative humidity", humidity, "%") ??
    outside("Relative humidity", humidity, 0, 100, "%") ??
    computed((B * load) / (A - load))
  );
};

/**
 * How far a surface stands above the dew point of the air around it.
 *
 * At 0 K or below the surface is wet, and no insulation test means anything; 3 K and more is practice.
 *
 * @param surface temperature of the insulation's surface, °C, −45 to 105
 * @param temperature of the air, °C, −45 to 60
 * @param humidity relative humidity, %, above 0, at most 100
 * @returns K, negative below the dew point; `range` outside
 * @example dewMargin(20, 25, 10) // 28.77
 */
export const dewMargin = (
  surface: number,
  temperature: number,
  humidity: number,
): Result<number> => {
  const dew = dewPoint(temperature, humidity);
  return (
    outside("Surface temperature", surface, -45, 105, "°C") ??
    (dew.ok ? computed(surface - dew.value) : dew)
  );
};
