import { dewMargin } from "../engineering/dewPoint";
import { quantity } from "./inputs";
import { spill } from "./spill";

/**
 * How far a surface stands above the dew point of the air around it, K.
 * @customfunction DEWMARGIN
 * @param surface Temperature of the insulation's surface, °C
 * @param temperature Air temperature, °C, -45 to 60
 * @param humidity Relative humidity, %
 * @returns K, negative below the dew point
 * @example =GEAR.DEWMARGIN(20, 25, 10) // 28.77
 * @refuses =GEAR.DEWMARGIN(20, 25, 120)
 */
export function dewmargin(
  surface: unknown[][],
  temperature: unknown[][],
  humidity: unknown[][],
): unknown[][] {
  return spill(
    [
      quantity("Surface temperature", surface, "°C"),
      quantity("Air temperature", temperature, "°C"),
      quantity("Relative humidity", humidity, "%"),
    ],
    dewMargin,
  );
}
