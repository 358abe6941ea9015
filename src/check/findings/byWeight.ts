import type { Finding } from "./finding";

const ORDER = { stop: 0, query: 1, note: 2 } as const;

/** Findings, heaviest first; of one weight in the order in which they were found. */
export const byWeight = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort((one, other) => ORDER[one.weight] - ORDER[other.weight]);
