import { type Curve, curves } from "../engineering/curves";
import { curveTime } from "../engineering/curveTime";
import { pure, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum CurvetimeCurve {
  /** Standard inverse */
  iecStandard = "IEC standard",
  /** Very inverse */
  iecVery = "IEC very",
  /** Extremely inverse */
  iecExtremely = "IEC extremely",
  /** Long-time inverse */
  iecLongTime = "IEC long-time",
  /** Moderately inverse */
  ieeeModerately = "IEEE moderately",
  /** Very inverse */
  ieeeVery = "IEEE very",
  /** Extremely inverse */
  ieeeExtremely = "IEEE extremely",
}

const CURVES = Object.keys(curves) as Curve[];

/**
 * Expected operating time of an inverse-time element, s.
 * @customfunction CURVETIME
 * @param curve Curve, such as "IEC standard" or "IEEE very"
 * @param multiple Current as a multiple of pick-up, above 1, at most 20
 * @param setting Time multiplier (IEC) or time dial (IEEE)
 * @returns s
 * @example =GEAR.CURVETIME("IEEE very", 2, 1) // 7.028
 * @refuses =GEAR.CURVETIME("IEC very", 1, 0.1)
 * @refuses =GEAR.CURVETIME("IEC very", 2, 0)
 */
export function curvetime(
  curve: CurvetimeCurve,
  multiple: unknown[][],
  setting: unknown[][],
): unknown[][] {
  return spill(
    [
      word("Curve", curve, CURVES),
      pure("Multiple of pick-up", multiple),
      pure("Time setting", setting),
    ],
    curveTime,
  );
}
