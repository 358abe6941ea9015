/** IEC 60502-2 (memory): highest voltage of the cable's system kV, U0 kV. */
export const CABLES: readonly (readonly [number, number])[] = [
  [7.2, 3.6],
  [12, 6],
  [17.5, 8.7],
  [24, 12],
  [36, 18],
];

/** Cables by their nominal voltage: IEC 60502-2 and BS 6622 (quoted in cable makers' documents): U kV, U0 kV. */
export const BY_NOMINAL: readonly (readonly [number, number])[] = [
  [6, 3.6],
  [10, 6],
  [15, 8.7],
  [20, 12],
  [30, 18],
  [6.6, 3.8],
  [11, 6.35],
  [22, 12.7],
  [33, 19],
];

/** IEEE 400.2-2013, table 3 (read in a test-set maker's reprint): system kV, acceptance and maintenance, kV rms. */
export const VLF: readonly (readonly [number, number, number])[] = [
  [5, 10, 7],
  [8, 13, 10],
  [15, 21, 16],
  [20, 26, 20],
  [25, 32, 24],
  [28, 36, 27],
  [30, 38, 29],
  [35, 44, 33],
  [46, 57, 43],
];
