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
 */
export function kneepoint(volts: unknown[][], amps: unknown[][], rule?: KneepointRule): unknown {
  const [[chosen] = []] = spill(
    [optional(word("Rule", [[rule]], KNEE_RULES), "IEC 10/50")],
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
