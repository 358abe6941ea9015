import type { Criterion } from "./criterion";

/**
 * Spread of contact resistance among poles or similar joints above which to investigate, as a fraction
 * of the lowest: 0.5 (read in a breaker maker's bulletin). Above it is a query, not a failure.
 *
 * @example contactSpread.value // 0.5
 */
export const contactSpread: Criterion = {
  value: 0.5,
  source: {
    document: "Breaker maker's bulletin",
    edition: "",
    place: "contact resistance among poles",
    certainty: "read",
    note: "asks for investigation, is not by itself a failure",
  },
};
