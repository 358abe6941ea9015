import type { Criterion } from "./criterion";

/** Part of its rated current below which a cool connection proves nothing. */
export const leastLoad: Criterion = {
  value: 0.4,
  source: {
    document: "NFPA 70B",
    edition: "1998",
    place: "18-17.5.2",
    certainty: "quoted",
    by: "a published page",
  },
};
