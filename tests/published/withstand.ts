/** IEC 62271-1 rated insulation levels (memory, save 50 kV at 24 kV: read): U_r kV, U_d kV common value, across the isolating distance kV. */
export const IEC: readonly (readonly [number, number, number])[] = [
  [3.6, 10, 12],
  [7.2, 20, 23],
  [12, 28, 32],
  [17.5, 38, 45],
  [24, 50, 60],
  [36, 70, 80],
  [52, 95, 110],
  [72.5, 140, 160],
];

/** IEC 62271-1 series II, as a handbook prints ANSI C37.20 (read there; 8.25 kV memory): U_r kV, U_d kV. */
export const SERIES_II: readonly (readonly [number, number])[] = [
  [4.76, 19],
  [8.25, 36],
  [15, 36],
  [15.5, 50],
  [25.8, 60],
  [27, 60],
  [38, 80],
];

/** Names of nominal classes in the trade, kV, and what they are rated (practice). */
export const CLASSES: readonly (readonly [number, number])[] = [
  [5, 4.76],
  [25, 27],
  [35, 38],
];

/**
 * ANSI/NETA MTS-2019 table 100.2, metal-clad, field (read): rated kV, AC kV, DC kV where one is given.
 * The first rows are the ends of the table's low-voltage ranges.
 */
export const NETA: readonly (readonly [number, number, number?])[] = [
  [0.254, 1.6, 2.3],
  [0.508, 1.6, 2.3],
  [0.635, 1.6, 2.3],
  [0.73, 2.2, 3.1],
  [1.058, 2.2, 3.1],
  [4.76, 14, 20],
  [8.25, 27, 37.5],
  [15, 27, 37.5],
  [27, 45],
  [38, 60],
];

/** IEEE C37.20.2, metal-clad, factory (read in a handbook; DC at 4.76 kV memory): rated kV, AC kV, DC kV. */
export const FACTORY: readonly (readonly [number, number, number?])[] = [
  [4.76, 19, 27],
  [8.25, 36, 50],
  [15, 36, 50],
  [27, 60],
  [38, 80],
];
