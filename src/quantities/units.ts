import type { QuantityName } from "../messages/inputName";

/**
 * One unit: its quantity, its power of ten to the SI unit, and what it is `times` the SI unit where that is no
 * power of ten; of a temperature also what is added to it first.
 */
export interface UnitSize {
  readonly quantity: QuantityName;
  readonly exponent: number;
  readonly times?: number;
  readonly plus?: number;
}

/** Units of measurement that readings come in; inches, pounds and feet by the international yard and pound (1959), inHg at 0 °C. */
export const UNITS = {
  TΩ: { quantity: "resistance", exponent: 12 },
  GΩ: { quantity: "resistance", exponent: 9 },
  MΩ: { quantity: "resistance", exponent: 6 },
  kΩ: { quantity: "resistance", exponent: 3 },
  Ω: { quantity: "resistance", exponent: 0 },
  mΩ: { quantity: "resistance", exponent: -3 },
  µΩ: { quantity: "resistance", exponent: -6 },
  nΩ: { quantity: "resistance", exponent: -9 },
  kV: { quantity: "voltage", exponent: 3 },
  V: { quantity: "voltage", exponent: 0 },
  mV: { quantity: "voltage", exponent: -3 },
  kA: { quantity: "current", exponent: 3 },
  A: { quantity: "current", exponent: 0 },
  mA: { quantity: "current", exponent: -3 },
  µA: { quantity: "current", exponent: -6 },
  nA: { quantity: "current", exponent: -9 },
  MPa: { quantity: "pressure", exponent: 6 },
  bar: { quantity: "pressure", exponent: 5 },
  kPa: { quantity: "pressure", exponent: 3 },
  hPa: { quantity: "pressure", exponent: 2 },
  mbar: { quantity: "pressure", exponent: 2 },
  Pa: { quantity: "pressure", exponent: 0 },
  psi: { quantity: "pressure", exponent: 0, times: 6894.757293168 },
  "kgf/cm²": { quantity: "pressure", exponent: 0, times: 98066.5 },
  inHg: { quantity: "pressure", exponent: 0, times: 3386.389 },
  mmHg: { quantity: "pressure", exponent: 0, times: 133.322387415 },
  min: { quantity: "time", exponent: 0, times: 60 },
  s: { quantity: "time", exponent: 0 },
  ms: { quantity: "time", exponent: -3 },
  m: { quantity: "length", exponent: 0 },
  mm: { quantity: "length", exponent: -3 },
  ft: { quantity: "length", exponent: 0, times: 0.3048 },
  in: { quantity: "length", exponent: 0, times: 0.0254 },
  mil: { quantity: "length", exponent: 0, times: 0.0000254 },
  kg: { quantity: "mass", exponent: 0 },
  t: { quantity: "mass", exponent: 3 },
  lb: { quantity: "mass", exponent: 0, times: 0.45359237 },
  "°C": { quantity: "temperature", exponent: 0 },
  "°F": { quantity: "temperature", exponent: 0, times: 5 / 9, plus: -32 },
  "%": { quantity: "share", exponent: 0 },
  N·m: { quantity: "torque", exponent: 0 },
  lbf·ft: { quantity: "torque", exponent: 0, times: 1.3558179483314 },
  lbf·in: { quantity: "torque", exponent: 0, times: 0.11298482902762 },
  kgf·m: { quantity: "torque", exponent: 0, times: 9.80665 },
  kgf·cm: { quantity: "torque", exponent: 0, times: 0.0980665 },
  daN·m: { quantity: "torque", exponent: 1 },
  VA: { quantity: "apparent power", exponent: 0 },
  Hz: { quantity: "frequency", exponent: 0 },
} as const satisfies Record<string, UnitSize>;

export type Unit = keyof typeof UNITS;

export const unitSize = (unit: Unit): UnitSize => UNITS[unit];
