import type { Criterion } from "./criterion";

/**
 * Ratio error beyond which an instrument transformer has another ratio than its plate says, whatever its class and
 * whatever is applied, ±%: 10, common practice. Taps and wrong units lie further off, errors of a sound one nearer.
 *
 * @example grossRatio.value // 10
 */
export const grossRatio: Criterion = {
  value: 10,
  source: {
    document: "Common practice",
    edition: "",
    place: "ratio error of a wrong tap or a wrong transformer",
    certainty: "practice",
  },
};
