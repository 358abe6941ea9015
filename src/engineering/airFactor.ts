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
  /** How the exponents m and w are found; from g if not given. */
  readonly rule?: AirRule;
}

/**
 * How the exponents m and w are found:
 * - `g`: IEC 60060-1, from the parameter g at the corrected voltage
 * - `switchgear`: IEC 62271-1, rated voltages up to 52 kV: m = 1, w = 0 above 11 g/m³ and 1 below
 * - `parallel`: the same where solid, vacuum or gas insulation lies in parallel with the air: the factor
 *   counts only from 0.95 to 1.05, and is 1 elsewhere
 */
export const AIR_RULES = ["g", "switchgear", "parallel"] as const;
export type AirRule = (typeof AIR_RULES)[number];

/** Water in the air, g/m³, above which humidity does not count for switchgear (IEC 62271-1, memory). */
export const DRIEST_UNCORRECTED = 11;

/** The factors that count where internal insulation lies in parallel with the air (IEC 62271-1, memory). */
export const PARALLEL = { least: 0.95, most: 1.05 } as const;

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
 * its humidity. By the rule `g` m and w follow from g = 1.1 · K · U_peak / (500 · L · δ · k), at the
 * voltage that is applied, so that K is found by halving in upon it. It applies to air as insulation, not to
 * solids or to gas in a tank.
 *
 * @returns a pure number, 1 in the standard atmosphere of 20 °C, 101.3 kPa, 11 g/m³; `range` outside
 *   the ranges of `AirTest`, where humidity counts and h/δ lies outside 1 g/m³ to 15 g/m³ (impulse:
 *   20 g/m³), or k1 outside 0.8 to 1.05: the standard vouches for no more (memory)
 * @example airFactor({ temperature: 20, pressure: 90, humidity: 63.5, testkV: 28, gap: 0.05, wave: "AC" }) // 0.891
 * @example airFactor({ temperature: 20, pressure: 101.3, humidity: 45, testkV: 22.4, gap: 0.12, wave: "AC", rule: "switchgear" }) // 0.961
 */
export const airFactor = (air: AirTest): Result<number> => {
  const { temperature, pressure, humidity, wave, rule = "g" } = air;
  const refusal = wrongAir(air);
  if (refusal) return refusal;
  const humid = HUMIDITY[wave];
  const density = (pressure / PRESSURE) * (KELVIN / (273 + temperature));
  const water = absoluteHumidity(temperature, humidity);
  const departure = water / density - 11;
  const k = 1 + humid.slope * departure + humid.curvature * departure ** 2;
  const { m, w } =
    rule === "g" ? exponentsAt(air, density, k) : { m: 1, w: water > DRIEST_UNCORRECTED ? 0 : 1 };
  const k1 = density ** m;
  const factor = k1 * k ** w;
  if (rule === "parallel")
    return computed(factor >= PARALLEL.least && factor <= PARALLEL.most ? factor : 1);
  return (
    (w === 0
      ? undefined
      : outside("Absolute humidity over air density", water / density, 1, humid.most, "g/m³")) ??
    outside("Air density factor k1", k1, RELIABLE.least, RELIABLE.most, "") ??
    computed(factor)
  );
};

/** Why the air, voltage or path cannot be; undefined where they can. */
const wrongAir = ({ temperature, pressure, humidity, testkV, gap, wave, rule = "g" }: AirTest) => {
  if (!Object.hasOwn(HUMIDITY, wave))
    return refuse("wrong", (text) =>
      text.engineering.oneOf(text.name("Wave"), ["AC", "DC", "impulse"]),
    );
  if (!AIR_RULES.includes(rule))
    return refuse("wrong", (text) => text.engineering.oneOf(text.name("Rule"), AIR_RULES));
  return (
    outside("Air temperature", temperature, -40, 60, "°C") ??
    outside("Air pressure", pressure, 50, 110, "kPa") ??
    notPositive("Relative humidity", humidity, "%") ??
    outside("Relative humidity", humidity, 0, 100, "%") ??
    notPositive("Test voltage", testkV, "kV") ??
    notPositive("Shortest discharge path", gap, "m")
  );
};

/**
 * The exponents at the voltage that is applied, which they themselves correct: the factor is halved in
 * upon between bounds that it never reaches.
 */
const exponentsAt = ({ testkV, gap, wave }: AirTest, density: number, k: number) => {
  const standard = (1.1 * testkV * (wave === "AC" ? Math.SQRT2 : 1)) / (500 * gap * density * k);
  let [low, high] = BOUNDS;
  for (let step = 0; step < STEPS; step++) {
    const middle = (low + high) / 2;
    const { m, w } = exponents(standard * middle);
    if (density ** m * k ** w > middle) low = middle;
    else high = middle;
  }
  return exponents((standard * (low + high)) / 2);
};

const BOUNDS: readonly [number, number] = [0.2, 2];
const STEPS = 50;

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
