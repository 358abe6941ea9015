/** One unit: its quantity, its power of ten to the SI unit, and for the minute what it is `times` the SI unit. */
export interface UnitSize {
  readonly quantity: string;
  readonly exponent: number;
  readonly times?: number;
}

/** Units of measurement that readings come in. */
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
  min: { quantity: "time", exponent: 0, times: 60 },
  s: { quantity: "time", exponent: 0 },
  ms: { quantity: "time", exponent: -3 },
  m: { quantity: "length", exponent: 0 },
  mm: { quantity: "length", exponent: -3 },
  kg: { quantity: "mass", exponent: 0 },
  "°C": { quantity: "temperature", exponent: 0 },
  "%": { quantity: "share", exponent: 0 },
  N·m: { quantity: "torque", exponent: 0 },
  VA: { quantity: "apparent power", exponent: 0 },
  Hz: { quantity: "frequency", exponent: 0 },
} as const satisfies Record<string, UnitSize>;

export type Unit = keyof typeof UNITS;

export const unitSize = (unit: Unit): UnitSize => UNITS[unit];
