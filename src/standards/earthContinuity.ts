import type { Criterion, Source } from "./criterion";

const source: Source = {
  document: "IEC 62271-200",
  edition: "2021",
  place: "continuity of the earthing circuit",
  certainty: "memory",
};

/**
 * Continuity of the earthing circuit of metal-enclosed switchgear: at 30 A DC the drop to the earthing
 * point is no more than 3 V (IEC 62271-200, memory). `current` in A, `drop` in V.
 *
 * @example earthContinuity.drop.value // 3
 */
export const earthContinuity: Readonly<Record<"current" | "drop", Criterion>> = {
  current: { value: 30, source },
  drop: { value: 3, source },
};

/**
 * Point-to-point resistance of grounding above which NETA asks for an investigation, mΩ: 0.5 Ω, no test current
 * prescribed (ANSI/NETA ATS, grounding systems, memory).
 *
 * @example groundContinuity.value // 500
 */
export const groundContinuity: Criterion = {
  value: 500,
  source: {
    document: "ANSI/NETA ATS",
    edition: "2025",
    place: "grounding systems, point-to-point resistance 0.5 Ω",
    certainty: "memory",
  },
};
