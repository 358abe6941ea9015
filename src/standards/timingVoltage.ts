import type { Criterion } from "./criterion";

/**
 * How far the control voltage may stand from the rated one while operating times are measured, %: 5,
 * common practice. The maker's times are given at rated voltage.
 *
 * @example timingVoltage.value // 5
 */
export const timingVoltage: Criterion = {
  value: 5,
  source: {
    document: "Common practice",
    edition: "",
    place: "control voltage while timing, ± of rated",
    certainty: "practice",
  },
};
