import type { Criterion } from "./criterion";
import type { Chosen } from "./editions";
import * as lowVoltage from "./iec60364-6.2016";
import { netaStandard } from "./netaEditions";
import { secondaryTypical } from "./practice";

/** What a secondary winding of an instrument transformer is judged by. */
export interface SecondaryInsulation {
  /** Least insulation resistance, MΩ. */
  readonly minimum: Criterion;
  /** Below this it fails, MΩ; between the two it is looked into. Without it the minimum alone decides. */
  readonly floor?: Criterion;
  /** Least test voltage, V DC. */
  readonly testVoltage: Criterion;
}

/**
 * Insulation of the secondary windings of instrument transformers: NETA table 100.5 for windings of 600 V;
 * for IEC, which gives none, practice, and no less than any low-voltage circuit has.
 *
 * @example secondaryInsulation({ basis: "NETA" }).minimum.value // 500
 */
export const secondaryInsulation = (chosen: Chosen): SecondaryInsulation => {
  if (chosen.basis === "IEC")
    return {
      minimum: secondaryTypical,
      floor: lowVoltage.minimum,
      testVoltage: lowVoltage.testVoltage,
    };
  const { secondaryMinimum, secondaryTestVoltage } = netaStandard(chosen);
  return { minimum: secondaryMinimum, testVoltage: secondaryTestVoltage };
};
