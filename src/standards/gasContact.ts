import type { Criterion } from "./criterion";

/**
 * How far from the plate's alarm and lockout pressures the contacts of a density monitor may work, as a
 * fraction: 0.02, common practice for monitors of class 1 with their rig. The maker's comes first.
 *
 * @example gasContact.value // 0.02
 */
export const gasContact: Criterion = {
  value: 0.02,
  source: {
    document: "Common practice",
    edition: "",
    place: "contact points of a density monitor, ± of the plate's",
    certainty: "practice",
  },
};
