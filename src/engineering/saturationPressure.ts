const CRITICAL = { kelvin: 318.7, pressure: 3.755 };
const STEEPNESS = 6.43;

/**
 * Pressure at which SF6 liquefies: ln(P / P_c) = 6.43 (1 − T_c / T), the straight line between the
 * triple point (222.4 K, 0.231 MPa) and the critical point (318.7 K, 3.755 MPa), both memory.
 *
 * It lies within a few percent of measured values, enough to warn.
 *
 * @param kelvin temperature, K, 222.4 to 318.7
 * @returns absolute pressure, MPa; Infinity above the critical temperature, where nothing liquefies
 * @example saturationPressure(293.15) // 2.1
 */
export const saturationPressure = (kelvin: number): number =>
  kelvin > CRITICAL.kelvin
    ? Number.POSITIVE_INFINITY
    : CRITICAL.pressure * Math.exp(STEEPNESS * (1 - CRITICAL.kelvin / kelvin));
