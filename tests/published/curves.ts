/**
 * Inverse-time curves, t = setting (A / (M^p − 1) + B): IEC 60255-151 and IEEE C37.112, read in relay
 * makers' manuals that cite them: name, A, B, p.
 */
export const CURVES: readonly (readonly [string, number, number, number])[] = [
  ["IEC standard", 0.14, 0, 0.02],
  ["IEC very", 13.5, 0, 1],
  ["IEC extremely", 80, 0, 2],
  ["IEC long-time", 120, 0, 1],
  ["IEEE moderately", 0.0515, 0.114, 0.02],
  ["IEEE very", 19.61, 0.491, 2],
  ["IEEE extremely", 28.2, 0.1217, 2],
];
