import type { Criterion } from "./criterion";

/**
 * How far below the filling pressure a reading brought to 20 °C may stand before gas is added, as a
 * fraction: 0.02, common practice for what gauge and thermometer are uncertain by.
 *
 * @example gasFilling.value // 0.02
 */
export const gasFilling: Criterion = {
  value: 0.02,
  source: {
    document: "Common practice",
    edition: "",
    place: "reading below filling pressure, for the uncertainty of gauge and thermometer",
    certainty: "practice",
  },
};
