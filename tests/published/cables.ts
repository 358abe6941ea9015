/** IEC 60502-2 (memory): highest voltage of the cable's system kV, U0 kV. */
export const CABLES: readonly (readonly [number, number])[] = [
  [7.2, 3.6],
  [12, 6],
  [17.5, 8.7],
  [24, 12],
  [36, 18],
];

/** IEEE 400.2-2013, table 3 (read; 25 kV from a damaged layout): system kV, acceptance, kV rms. */
export const VLF: readonly (readonly [number, number])[] = [
  [5, 10],
  [8, 13],
  [15, 21],
  [25, 32],
  [35, 44],
];
