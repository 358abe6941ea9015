import type { Criterion } from "./criterion";

/**
 * How far an applied torque may stand from the required one, %: 10, common practice where the maker
 * gives a single value and no range. The wrench's own error comes out of it.
 *
 * @example torqueTolerance.value // 10
 */
export const torqueTolerance: Criterion = {
  value: 10,
  source: {
    document: "Common practice",
    edition: "",
    place: "applied against required torque, ±",
    certainty: "practice",
  },
};
