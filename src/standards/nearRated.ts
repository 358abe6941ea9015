import type { Criterion } from "./criterion";

/**
 * How far from its rated current, in percent of it, a current transformer may be injected and count as
 * injected at rated current: 10 %, common practice, since no set holds a current to the ampere.
 *
 * @example nearRated.value // 10
 */
export const nearRated: Criterion = {
  value: 10,
  source: {
    document: "Common practice",
    edition: "",
    place: "injection near rated current, % of rated",
    certainty: "practice",
  },
};
