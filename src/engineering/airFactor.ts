import { type Result, refuse } from "../quantities/result";
import { computed } from "./computed";
import { notPositive } from "./notPositive";
import { outside } from "./outside";

/** The air of the test, the test voltage and the shortest discharge path. */
export interface AirTest {
  /** Air temperature, °C, −40 to 60. */
  readonly temperature: number;
  /** Air pressure, kPa, 50 to 110. */
  readonly pressure: number;
  /** Relative humidity, %, above 0, at most 100. */
  readonly humidity: number;
  /** Test voltage, kV: rms for AC, the value itself for DC, the peak for an impulse. */
  readonly testkV: number;
  /** Shortest discharge path, m. */
  readonly gap: number;
  readonly wave: "AC" | "DC" | "impulse";
}

/** Slope and curvature of the humidity factor k, and the h/δ, g/m³, that it holds up to. */
const HUMIDITY = {
  AC: { slope: 0.012, curvature: 0, most: 15 },
  DC: { slope: 0.014, curvature: -0.00022, most: 15 },
  impulse: { slope: 0.01, curvature: 0, most: 20 },
} as const;

const [PRESSURE, KELVIN] = [101.3, 293];

/** Density factor k1 that the standard calls reliable (memory). */
const RELIABLE = { least: 0.8, most: 1.05 };

/**
 * Atmospheric correction factor K = k1 · k2 for a withstand test in air, IEC 60060-1:2010 (memory).
 *
 * The voltage to apply is K times the standard voltage. k1 = δ^m for the air's density, k2 = k^w for
 * its humidity, m and w from g = 1.1 · U_peak / (500 · L · δ · k). It applies to air as insulation,
 * not to solids or to gas in a tank.
 *
 * @returns a pure number, 1 in the standard atmosphere of 20 °C, 101.3 kPa, 11 g/m³; `range` outside
 *   the ranges of `AirTest`, where h/δ lies outside 1 g/m³ to 15 g/m³ (impulse: 20 g/m³), or k1
 *   outside 0.8 to 1.05: the standard vouches for no more (memory)
 * @example airFactor({ temperature: 20, pressure: 90, humidity: 63.5, testkV: 28, gap: 0.05, wave: "AC" }) // 0.889
 */
export const airFactor = (air: AirTest): Result<number> => {
  const { temperature, pressure, humidity, testkV, gap } = air;
  if (!Object.hasOwn(HUMIDITY, air.wave)) return refuse("wrong", "Wave must be AC, DC or impulse.");
  const humid = HUMIDITY[air.wave];
  const refusal =
    outside("Air temperature", temperature, -40, 60, "°C") ??
    outside("Air pressure", pressure, 50, 110, "kPa") ??
    notPositive("Relative humidity", humidity, "%") ??
    outside("Relative humidity", humidity, 0, 100, "%") ??
    notPositive("Test voltage", testkV, "kV") ??
    notPositive("Shortest discharge path", gap, "m");
  if (refusal) return refusal;

  const density = (pressure / PRESSURE) * (KELVIN / (273 + temperature));
  const humidityToDensity = absoluteHumidity(temperature, humidity) / density;
  const departure = humidityToDensity - 11;
  const k = 1 + humid.slope * departure + humid.curvature * departure ** 2;
  const breakdown = 1.1 * testkV * (air.wave === "AC" ? Math.SQRT2 : 1);
  const { m, w } = exponents(breakdown / (500 * gap * density * k));
  const [k1, k2] = [density ** m, k ** w];
  return (
    outside("Absolute humidity over air density", humidityToDensity, 1, humid.most, "g/m³") ??
    outside("Air density factor k1", k1, RELIABLE.least, RELIABLE.most, "") ??
    computed(k1 * k2)
  );
};

/** Water in the air, g/m³, from °C and % (IEC 60060-1:2010, memory). */
const absoluteHumidity = (temperature: number, humidity: number): number =>
  (6.11 * humidity * Math.exp((17.6 * temperature) / (243 + temperature))) /
  (0.4615 * (273 + temperature));

/** Exponents m and w over g (IEC 60060-1:2010, memory). */
const exponents = (g: number): { m: number; w: number } => {
  const rising = (g * (g - 0.2)) / 0.8;
  if (g < 0.2) return { m: 0, w: 0 };
  if (g < 1) return { m: rising, w: rising };
  if (g <= 1.2) return { m: 1, w: 1 };
  return { m: 1, w: g < 2 ? ((2.2 - g) * (2 - g)) / 0.8 : 0 };
};
