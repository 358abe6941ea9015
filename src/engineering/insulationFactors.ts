import type { Points } from "./interpolate";

/**
 * Factors that bring an insulation resistance measured at a temperature (°C) to 20 °C.
 *
 * ANSI/NETA ATS-2025, table 100.14 (read in a printed copy). That copy prints 245 for oil at 100 °C,
 * which breaks the row's steps and is taken as a slip for 254; a second published table agrees from
 * 0 °C to 75 °C, but for oil at 15 °C, where it has 0.74.
 */
export const insulationFactors: Readonly<Record<"solid" | "oil", Points>> = {
  solid: [
    [-10, 0.25],
    [-5, 0.32],
    [0, 0.4],
    [5, 0.5],
    [10, 0.63],
    [15, 0.81],
    [20, 1],
    [25, 1.25],
    [30, 1.58],
    [35, 2],
    [40, 2.5],
    [45, 3.15],
    [50, 3.98],
    [55, 5],
    [60, 6.3],
    [65, 7.9],
    [70, 10],
    [75, 12.6],
    [80, 15.8],
    [85, 20],
    [90, 25.2],
    [95, 31.6],
    [100, 40],
    [105, 50.4],
  ],
  oil: [
    [-10, 0.125],
    [-5, 0.18],
    [0, 0.25],
    [5, 0.36],
    [10, 0.5],
    [15, 0.75],
    [20, 1],
    [25, 1.4],
    [30, 1.98],
    [35, 2.8],
    [40, 3.95],
    [45, 5.6],
    [50, 7.85],
    [55, 11.2],
    [60, 15.85],
    [65, 22.4],
    [70, 31.75],
    [75, 44.7],
    [80, 63.5],
    [85, 89.79],
    [90, 127],
    [95, 180],
    [100, 254],
    [105, 359.15],
  ],
};
