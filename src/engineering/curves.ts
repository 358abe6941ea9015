/** Constants of an inverse-time curve, t = setting · (a / (M^p − 1) + b), in s. */
export interface CurveConstants {
  readonly a: number;
  readonly b: number;
  readonly p: number;
}

/**
 * Inverse-time curves: IEC 60255-151:2009 (long-time a national addition) and IEEE C37.112-1996, all
 * read in relay makers' manuals that cite the standards; editions memory.
 */
export const curves = {
  "IEC standard": { a: 0.14, b: 0, p: 0.02 },
  "IEC very": { a: 13.5, b: 0, p: 1 },
  "IEC extremely": { a: 80, b: 0, p: 2 },
  "IEC long-time": { a: 120, b: 0, p: 1 },
  "IEEE moderately": { a: 0.0515, b: 0.114, p: 0.02 },
  "IEEE very": { a: 19.61, b: 0.491, p: 2 },
  "IEEE extremely": { a: 28.2, b: 0.1217, p: 2 },
} as const satisfies Record<string, CurveConstants>;

export type Curve = keyof typeof curves;
