/** A bolt with coarse thread: stress area A_s, mm², and nominal diameter, mm. */
export interface Bolt {
  readonly diameter: number;
  readonly area: number;
}

const INCH = 25.4;

/** A unified coarse thread of so many threads an inch: A_s = π/4 (d − 0.9743/n)². */
const unc = (inches: number, threads: number): Bolt => ({
  diameter: inches * INCH,
  area: (Math.PI / 4) * (inches - 0.9743 / threads) ** 2 * INCH ** 2,
});

/**
 * Bolts with coarse thread: metric M8 to M24 (read in a table citing ISO 898-1), the other metric ones from
 * memory; unified (UNC) by the formula of ASME B1.1, which agrees with four published tables.
 */
export const bolts = {
  M6: { diameter: 6, area: 20.1 },
  M8: { diameter: 8, area: 36.6 },
  M10: { diameter: 10, area: 58 },
  M12: { diameter: 12, area: 84.3 },
  M14: { diameter: 14, area: 115 },
  M16: { diameter: 16, area: 157 },
  M18: { diameter: 18, area: 192 },
  M20: { diameter: 20, area: 245 },
  M22: { diameter: 22, area: 303 },
  M24: { diameter: 24, area: 353 },
  M27: { diameter: 27, area: 459 },
  M30: { diameter: 30, area: 561 },
  "1/4": unc(1 / 4, 20),
  "5/16": unc(5 / 16, 18),
  "3/8": unc(3 / 8, 16),
  "7/16": unc(7 / 16, 14),
  "1/2": unc(1 / 2, 13),
  "9/16": unc(9 / 16, 12),
  "5/8": unc(5 / 8, 11),
  "3/4": unc(3 / 4, 10),
  "7/8": unc(7 / 8, 9),
  "1": unc(1, 8),
} as const satisfies Record<string, Bolt>;

export type BoltSize = keyof typeof bolts;

/** The size that a drawing means by `1/2"`, `1/2-13 UNC`, `1/2 in` or `m12`; other text as it is. */
export const boltNamed = (text: string): string => {
  const plain = text.trim().replace(/^m/, "M");
  const [, inches] =
    /^(\d(?:\/\d{1,2})?)\s*(?:"|″|in\.?|inch)?(?:\s*[-–]\s*\d{1,2}(?:\s*UNC)?)?$/i.exec(plain) ??
    [];
  return inches ?? plain;
};

/** Proof stress S_p, MPa, of bolts up to a diameter, mm, and of thicker ones. */
export interface ProofStress {
  readonly upTo: number;
  readonly small: number;
  readonly large: number;
}

const PSI = 0.006894757293168;
const same = (stress: number): ProofStress => ({ upTo: 16, small: stress, large: stress });

/**
 * Proof stress: ISO 898-1:2013, 8.8 to 12.9 (read; edition memory), 4.6 to 6.8 (memory); SAE J429, quoted in a
 * fastener maker's table, psi there.
 */
export const proofStress = {
  "4.6": same(225),
  "5.6": same(280),
  "5.8": same(380),
  "6.8": same(440),
  "8.8": { upTo: 16, small: 580, large: 600 },
  "10.9": same(830),
  "12.9": same(970),
  "SAE 1": same(33_000 * PSI),
  "SAE 2": { upTo: 0.75 * INCH, small: 55_000 * PSI, large: 33_000 * PSI },
  "SAE 5": { upTo: INCH, small: 85_000 * PSI, large: 74_000 * PSI },
  "SAE 8": same(120_000 * PSI),
} as const satisfies Record<string, ProofStress>;

export type BoltGrade = keyof typeof proofStress;

/** The grade that is meant by `Grade 5`, `SAE J429 Gr. 5` or `class 8.8`; other text as it is. */
export const gradeNamed = (text: string): string => {
  const plain = text.trim();
  const [, sae] = /^(?:sae\s*)?(?:j429\s*)?(?:grade|gr\.?)?\s*([1257]|8)$/i.exec(plain) ?? [];
  if (sae !== undefined) return `SAE ${sae}`;
  return plain.replace(/^(?:property\s+)?class\s+/i, "");
};
