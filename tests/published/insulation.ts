/**
 * Conversion factors for insulation resistance to 20 °C: ANSI/NETA table 100.14 (read in a printed copy
 * of the 2025 acceptance edition): °C, oil, solid. The tests keep their own copy, so that a slip in the
 * program's table is found.
 */
export const FACTORS: readonly (readonly [number, number, number])[] = [
  [-10, 0.125, 0.25],
  [-5, 0.18, 0.32],
  [0, 0.25, 0.4],
  [5, 0.36, 0.5],
  [10, 0.5, 0.63],
  [15, 0.75, 0.81],
  [20, 1, 1],
  [25, 1.4, 1.25],
  [30, 1.98, 1.58],
  [35, 2.8, 2],
  [40, 3.95, 2.5],
  [45, 5.6, 3.15],
  [50, 7.85, 3.98],
  [55, 11.2, 5],
  [60, 15.85, 6.3],
  [65, 22.4, 7.9],
  [70, 31.75, 10],
  [75, 44.7, 12.6],
  [80, 63.5, 15.8],
  [85, 89.79, 20],
  [90, 127, 25.2],
  [95, 180, 31.6],
  [100, 254, 40],
  [105, 359.15, 50.4],
];

/** Rated maximum voltages, kV, and the nominal voltage whose row of table 100.1 is theirs (IEEE C37.20.2, memory). */
export const MAXIMUM: readonly (readonly [number, number])[] = [
  [4.76, 5],
  [8.25, 8],
  [15.5, 15],
  [25.8, 25],
  [27, 25],
  [38, 34.5],
];

/** ANSI/NETA table 100.1 in MTS-2015, MTS-2019 and ATS-2025 (read): rated kV, test V DC, least MΩ. */
export const MINIMUM: readonly (readonly [number, number, number])[] = [
  [0.25, 500, 25],
  [0.6, 1000, 100],
  [1, 1000, 100],
  [2.5, 1000, 500],
  [5, 2500, 1500],
  [8, 2500, 2500],
  [15, 2500, 5000],
  [25, 5000, 10000],
  [34.5, 5000, 100000],
  [46, 5000, 100000],
];
