import type { Criterion } from "./criterion";

/** Least direct current for a four-wire measurement of contact resistance, A. */
export const contactCurrent: Criterion = {
  value: 100,
  source: {
    document: "ANSI C37.09",
    edition: "1999",
    place: "contact resistance",
    certainty: "read",
    note: "in quotation, edition from memory",
  },
};
