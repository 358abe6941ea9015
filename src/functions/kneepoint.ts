import { KNEE_RULES, type KneeRule, kneePoint } from "../engineering/kneePoint";
import { answer } from "../quantities/result";
import { gather } from "./gather";
import { optional, quantity, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum KneepointRule {
  /** 10 % more voltage, 50 % more current */
  iec = "IEC 10/50",
  /** Tangent at 45°, ungapped cores */
  ieeeUngapped = "IEEE 45",
  /** Tangent at 30°, gapped cores */
  ieeeGapped = "IEEE 30",
}

/**
 * Knee-point voltage of a current transformer from its measured excitation curve, V.
 * @customfunction KNEEPOINT
 * @param volts Voltages, V, rising
 * @param amps Exciting currents, A, one for each voltage
 * @param [rule] IEC 10/50, IEEE 45 or IEEE 30; IEC 10/50 if left out
 * @returns V
 * @example =GEAR.KNEEPOINT({10;20;40;60;80;100;110;120;130;140}, {0.004;0.006;0.009;0.012;0.016;0.022;0.03;0.055;0.13;0.32}) // 103
 * @refuses =GEAR.KNEEPOINT({10;20;40}, {0.004;0.006;0.009})
 * @refuses =GEAR.KNEEPOINT({10;20;30;25;40;50}, {0.004;0.006;0.008;0.009;0.01;0.02})
 */
export function kneepoint(volts: unknown[][], amps: unknown[][], rule?: KneepointRule): unknown {
  const [[chosen] = []] = spill(
    [optional(word("Rule", [[rule].flat(2)], KNEE_RULES), "IEC 10/50")],
    answer,
  );
  return isRule(chosen)
    ? gather(
        [quantity("Voltages", volts, "V"), quantity("Currents", amps, "A")],
        (voltages = [], currents = []) => kneePoint(voltages, currents, chosen),
      )
    : chosen;
}

const isRule = (cell: unknown): cell is KneeRule => KNEE_RULES.some((rule) => rule === cell);
