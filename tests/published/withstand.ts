/** IEC 62271-1 rated insulation levels (memory, save 24 kV: read): U_r kV, U_d kV common value. */
export const IEC: readonly (readonly [number, number])[] = [
  [3.6, 10],
  [7.2, 20],
  [12, 28],
  [17.5, 38],
  [24, 50],
  [36, 70],
  [52, 95],
  [72.5, 140],
];

/** ANSI/NETA MTS-2019 table 100.2, metal-clad, field (read): rated kV, AC kV, DC kV where one is given. */
export const NETA: readonly (readonly [number, number, number?])[] = [
  [4.76, 14, 20],
  [8.25, 27, 37.5],
  [15, 27, 37.5],
  [27, 45],
  [38, 60],
];
