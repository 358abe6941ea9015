/** Operating ranges, parts of the rated voltage, IEC 62271-1 (memory): operation, wave, least, most. */
export const COILS_IEC: readonly (readonly [string, string, number, number])[] = [
  ["closing", "AC", 0.85, 1.1],
  ["closing", "DC", 0.85, 1.1],
  ["opening", "AC", 0.85, 1.1],
  ["opening", "DC", 0.7, 1.1],
];

/** Three breaker makers' tables under ANSI/IEEE C37.06 (read): rated V DC, closing from and to, opening from and to. */
export const COILS_ANSI: readonly (readonly [number, number, number, number, number])[] = [
  [24, 19, 28, 14, 28],
  [48, 38, 56, 28, 56],
  [125, 100, 140, 70, 140],
  [250, 200, 280, 140, 280],
];

/** The same for rated V AC, closing and opening alike: from, to. */
export const COILS_ANSI_AC: readonly (readonly [number, number, number])[] = [
  [120, 104, 127],
  [240, 208, 254],
];
