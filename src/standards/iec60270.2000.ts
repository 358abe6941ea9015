import type { Criterion } from "./criterion";

/** Part of the allowed charge that the background of a measurement of partial discharge may reach. */
export const backgroundShare: Criterion = {
  value: 0.5,
  source: {
    document: "IEC 60270",
    edition: "2000",
    place: "background noise",
    certainty: "signed",
  },
};
