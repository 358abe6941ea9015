import type { Source } from "./criterion";

/** Inverse-time curves; their constants stand with the calculation. */
export const curves: Source = {
  document: "IEEE C37.112",
  edition: "1996",
  certainty: "read",
  note: "in relay makers' manuals, edition from memory",
};
