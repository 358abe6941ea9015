import type { Criterion } from "./criterion";

/**
 * How far from its point, in percent of full scale, what is applied to a meter may lie and still test
 * that point: 5 %, common practice.
 *
 * @example nearPoint.value // 5
 */
export const nearPoint: Criterion = {
  value: 5,
  source: {
    document: "Common practice",
    edition: "",
    place: "value applied to a meter, % of full scale from its point",
    certainty: "practice",
  },
};
