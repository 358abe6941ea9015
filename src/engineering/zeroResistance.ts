/**
 * Temperature below zero, °C, at which a metal's resistance would vanish by the straight line that
 * holds at ordinary temperatures: copper 234.5, aluminium 228 (read; α 0.00403 gives 228.1).
 */
export const zeroResistance = { copper: 234.5, aluminium: 228 } as const;

export type Metal = keyof typeof zeroResistance;
