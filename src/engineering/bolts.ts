/**
 * Stress area A_s, mm², of coarse-thread bolts (read in a table citing ISO 898-1), and nominal
 * diameter, mm.
 */
export const bolts = {
  M8: { diameter: 8, area: 36.6 },
  M10: { diameter: 10, area: 58 },
  M12: { diameter: 12, area: 84.3 },
  M14: { diameter: 14, area: 115 },
  M16: { diameter: 16, area: 157 },
  M20: { diameter: 20, area: 245 },
  M24: { diameter: 24, area: 353 },
} as const;

export type BoltSize = keyof typeof bolts;

/** Proof stress S_p, MPa, to M16 and above (ISO 898-1:2013, read; edition memory). */
export const proofStress = {
  "8.8": { small: 580, large: 600 },
  "10.9": { small: 830, large: 830 },
  "12.9": { small: 970, large: 970 },
} as const;

export type BoltGrade = keyof typeof proofStress;
