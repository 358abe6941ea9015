import { type Result, refuse } from "../quantities/result";
import { computed } from "./computed";
import { gasDensity, statePressure } from "./gasDensity";
import { outside } from "./outside";
import { saturationPressure } from "./saturationPressure";

export const GAS_REFERENCES = ["gauge", "absolute"] as const;
export type GasReference = (typeof GAS_REFERENCES)[number];

/** Standard atmosphere of rated pressures, MPa (IEC 62271-1:2017, memory). */
const STANDARD = 0.1013;

/** A pressure reading of a gas compartment, and the temperature to bring it to. */
export interface GasReading {
  /** MPa. */
  readonly pressure: number;
  /** Gas temperature, °C, −50 to 80. */
  readonly temperature: number;
  /** Temperature to bring the pressure to, °C, −50 to 80; 20 if not given. */
  readonly to?: number;
  /** Whether the pressure is above the atmosphere or absolute; gauge if not given. */
  readonly reference?: GasReference;
  /** The atmosphere when the gauge was read, kPa, 50 to 110; 101.3 if not given. */
  readonly barometer?: number;
}

/**
 * SF6 pressure brought to another temperature at constant density.
 *
 * A gauge reading gets the barometer added; the answer to it is above the standard atmosphere of
 * 101.3 kPa, as rated pressures are, so that it can stand beside the plate's. State equation of
 * Beattie and Bridgeman (memory; checked against a maker's published filling data).
 *
 * @returns MPa, gauge or absolute as the reading; `range` outside 0.01 MPa to 1.5 MPa absolute,
 *   outside the temperatures, or where the gas would liquefy at either temperature
 * @example gasPressure({ pressure: 0.6111, temperature: 5, barometer: 93.2 }) // 0.65
 */
export const gasPressure = ({
  pressure,
  temperature,
  to = 20,
  reference = "gauge",
  barometer = STANDARD * 1000,
}: GasReading): Result<number> => {
  const gauge = reference === "gauge";
  const absolute = gauge ? pressure + barometer / 1000 : pressure;
  const refusal =
    (GAS_REFERENCES.includes(reference)
      ? undefined
      : refuse("wrong", (text) =>
          text.engineering.oneOf(text.name("Reference"), ["gauge", "absolute"]),
        )) ??
    outside("Barometer", barometer, 50, 110, "kPa") ??
    outside("Gas temperature", temperature, -50, 80, "°C") ??
    outside("Temperature to bring it to", to, -50, 80, "°C") ??
    outside("Absolute gas pressure", absolute, 0.01, 1.5, "MPa") ??
    liquid(absolute, temperature);
  if (refusal) return refusal;
  const brought = statePressure(gasDensity(absolute, kelvin(temperature)), kelvin(to));
  return liquid(brought, to) ?? computed(gauge ? brought - STANDARD : brought);
};

const kelvin = (celsius: number) => celsius + 273.15;

const liquid = (absolute: number, temperature: number) => {
  const most = saturationPressure(kelvin(temperature));
  return absolute < most
    ? undefined
    : refuse("range", (text) =>
        text.engineering.liquid(temperature, most.toFixed(2), absolute.toFixed(3)),
      );
};
