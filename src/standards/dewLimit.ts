import type { Criterion } from "./criterion";

/**
 * Least margin of an insulation's surface above the dew point, K: 3 (practice). At 0 K or below the
 * surface is wet.
 *
 * @example dewLimit.value // 3
 */
export const dewLimit: Criterion = {
  value: 3,
  source: {
    document: "Common practice",
    edition: "",
    place: "surface above dew point",
    certainty: "practice",
  },
};
