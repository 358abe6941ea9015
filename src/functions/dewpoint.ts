import { dewPoint } from "../engineering/dewPoint";
import { quantity } from "./inputs";
import { spill } from "./spill";

/**
 * Dew point of the air, °C.
 * @customfunction DEWPOINT
 * @param temperature Air temperature, °C, -45 to 60
 * @param humidity Relative humidity, %
 * @returns °C
 */
export function dewpoint(temperature: unknown[][], humidity: unknown[][]): unknown[][] {
  return spill(
    [quantity("Air temperature", temperature, "°C"), quantity("Relative humidity", humidity, "%")],
    dewPoint,
  );
}
