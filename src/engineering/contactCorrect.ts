import { type Result, refuse } from "../quantities/result";
import { computed } from "./computed";
import { notPositive } from "./notPositive";
import { outside } from "./outside";
import { type Metal, zeroResistance } from "./zeroResistance";

/**
 * Resistance of a contact, joint or winding at the base temperature:
 * R_base = R_T (z + base) / (z + T), z 234.5 °C for copper, 228 °C for aluminium (read).
 *
 * The unit of the resistance is kept: µΩ for contacts and joints.
 *
 * @param microhm measured resistance, above 0
 * @param temperature of the metal, °C, −50 to 200
 * @param base temperature to correct to, °C, −50 to 200
 * @returns the resistance in its own unit; `range` outside, `wrong` for another metal
 * @example contactCorrect(1.472, 75) // 1.21
 */
export const contactCorrect = (
  microhm: number,
  temperature: number,
  metal: Metal = "copper",
  base = 20,
): Result<number> => {
  if (!Object.hasOwn(zeroResistance, metal))
    return refuse("wrong", (text) =>
      text.engineering.oneOf(text.name("Metal"), ["copper", "aluminium"]),
    );
  const zero = zeroResistance[metal];
  return (
    notPositive("Resistance", microhm, "µΩ") ??
    outside("Metal temperature", temperature, -50, 200, "°C") ??
    outside("Base temperature", base, -50, 200, "°C") ??
    computed((microhm * (zero + base)) / (zero + temperature))
  );
};
