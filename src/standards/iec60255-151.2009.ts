import type { Source } from "./criterion";

/** Inverse-time curves; their constants stand with the calculation. */
export const curves: Source = {
  document: "IEC 60255-151",
  edition: "2009",
  certainty: "read",
  note: "in relay makers' manuals, edition from memory",
};
