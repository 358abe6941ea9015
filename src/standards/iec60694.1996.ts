import type { Criterion } from "./criterion";

/** Least direct current for a four-wire measurement of contact resistance, A. */
export const contactCurrent: Criterion = {
  value: 50,
  source: {
    document: "IEC 60694",
    edition: "1996",
    place: "clause 6.4.1",
    certainty: "read",
    note: "in quotation; 50 A up to rated current",
  },
};
