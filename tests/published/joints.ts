/** Stress areas, mm² (read in a table citing ISO 898-1): bolt, nominal diameter mm, A_s. */
export const BOLTS: readonly (readonly [string, number, number])[] = [
  ["M8", 8, 36.6],
  ["M10", 10, 58],
  ["M12", 12, 84.3],
  ["M14", 14, 115],
  ["M16", 16, 157],
  ["M20", 20, 245],
  ["M24", 24, 353],
];

/** Proof stresses, MPa, ISO 898-1 (read): class, to M16, above. */
export const PROOF: readonly (readonly [string, number, number])[] = [
  ["8.8", 580, 600],
  ["10.9", 830, 830],
  ["12.9", 970, 970],
];
