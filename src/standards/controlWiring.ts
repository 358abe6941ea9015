import type { Result } from "../quantities/result";
import type { Basis, Criterion } from "./criterion";
import type { Chosen } from "./editions";
import * as lowVoltage from "./iec60364-6.2016";
import { auxiliary } from "./iec62271-1.2017";
import { controlSeconds as ieeeSeconds } from "./ieeeC37.20.2.2015";
import { netaStandard } from "./netaEditions";
import { figureOf, rowOf } from "./table";

/** Volts to kV. */
const KILO = 1000;

/** Control wire of switchgear is rated 600 V where nothing else is said (IEEE C37.20.2, practice). */
export const USUAL_WIRE_V = 600;

/**
 * Least insulation resistance of control wiring, MΩ: 1 for IEC (IEC 60364-6), 2 for NETA.
 *
 * @example controlMinimum({ basis: "NETA" }).value // 2
 */
export const controlMinimum = (chosen: Chosen): Criterion =>
  chosen.basis === "NETA" ? netaStandard(chosen).controlMinimum : lowVoltage.minimum;

/**
 * Least DC test voltage on control wiring, V: 500 for IEC; for NETA 1000 on wire rated 600 V and 500 on
 * wire rated 300 V.
 *
 * @param wireV what the wire is rated, V
 * @returns `none` for wire rated above 600 V under NETA
 * @example controlTestVoltage({ basis: "NETA" }, 300) // 500
 */
export const controlTestVoltage = (
  chosen: Chosen,
  wireV: number = USUAL_WIRE_V,
): Result<Criterion> =>
  chosen.basis === "NETA"
    ? figureOf(rowOf(netaStandard(chosen).controlTestVoltage, wireV / KILO), ({ testV }) => testV)
    : { ok: true, value: lowVoltage.testVoltage };

/**
 * Least duration of the withstand test of control wiring on site, s.
 *
 * @example controlSeconds.NETA.value // 60
 */
export const controlSeconds: Readonly<Record<Basis, Criterion>> = {
  IEC: auxiliary.routineSeconds,
  NETA: ieeeSeconds,
};
