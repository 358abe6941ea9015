import { dewPoint } from "../engineering/dewPoint";
import { quantity } from "./inputs";
import { spill } from "./spill";

/**
 * Dew point of the air, °C.
 * @customfunction DEWPOINT
 * @param temperature Air temperature, °C, -45 to 60
 * @param humidity Relative humidity, %
 * @returns °C
 * @example =GEAR.DEWPOINT(25, 10) // -8.77
 * @refuses =GEAR.DEWPOINT(70, 50)
 * @refuses =GEAR.DEWPOINT("warm", 50)
 */
export function dewpoint(temperature: unknown[][], humidity: unknown[][]): unknown[][] {
  return spill(
    [quantity("Air temperature", temperature, "°C"), quantity("Relative humidity", humidity, "%")],
    dewPoint,
  );
}
