import type { Criterion, Source } from "./criterion";

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

const table3: Source = {
  document: "IEC 60694",
  edition: "1996",
  place: "table 3, bolted connections in air",
  certainty: "read",
  by: "a published copy",
};

/** Rise over the air of a bare bolted connection at its rated current, K; a plated one may be warmer. */
export const riseOfBolted: Criterion = { value: 50, source: table3 };

/** Rise over the air of a silvered bolted connection, the most of any plating, K. */
export const riseOfSilvered: Criterion = { value: 75, source: table3 };
