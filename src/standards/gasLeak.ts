import type { Criterion } from "./criterion";

/**
 * Greatest relative leakage of a closed pressure system for SF6, % a year: 0.5 (IEC 62271-1, memory; 1 %
 * is remembered as well, for older gear). The maker's or project's own comes first.
 *
 * @example gasLeak.value // 0.5
 */
export const gasLeak: Criterion = {
  value: 0.5,
  source: {
    document: "IEC 62271-1",
    edition: "2017",
    place: "tightness, standardized leakage rates of closed pressure systems",
    certainty: "memory",
  },
};
