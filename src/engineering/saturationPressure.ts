import { interpolate, type Points } from "./interpolate";

/**
 * Saturation pressure of SF6, MPa absolute by °C: values of the reference equation of Guder and Wagner
 * (2009), as a published table gives them (read).
 */
const SATURATION: Points = [
  [-40, 0.341],
  [-30, 0.492],
  [-25, 0.585],
  [-20, 0.689],
  [-10, 0.94],
  [0, 1.252],
  [10, 1.634],
  [20, 2.098],
];

/** Pressure at the triple point, −50.8 °C, MPa absolute (memory): the least that a liquid stands under. */
const TRIPLE = 0.22;

/** What a reading close to saturation may be off by: it counts as saturated from here on. */
const SAFE = 0.97;

const CELSIUS = 273.15;

const LOGARITHMS: Points = SATURATION.map(([at, pressure]) => [at, Math.log(pressure)] as const);

/**
 * Pressure from which SF6 may be partly liquid, on the safe side: 3 % below the reference equation's
 * saturation pressure, its logarithm by straight lines over the temperature. Below −40 °C it is the
 * triple point's. From 20 °C on no compartment reaches it.
 *
 * @param kelvin temperature, K
 * @returns absolute pressure, MPa; Infinity above 20 °C
 * @example saturationPressure(253.15) // 0.668
 */
export const saturationPressure = (kelvin: number): number => {
  const celsius = kelvin - CELSIUS;
  if (celsius > 20) return Number.POSITIVE_INFINITY;
  const logarithm = interpolate(LOGARITHMS, celsius);
  return SAFE * (logarithm === undefined ? TRIPLE : Math.exp(logarithm));
};
