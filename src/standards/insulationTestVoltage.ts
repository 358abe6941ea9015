import { notPositive } from "../engineering/notPositive";
import type { Result } from "../quantities/result";
import type { Criterion } from "./criterion";
import type { Chosen } from "./editions";
import { netaStandard } from "./netaEditions";
import { testVoltagesByHabit } from "./practice";
import { figureOf, rowOf } from "./table";

/**
 * DC voltage for an insulation resistance test, V. A higher one than the least satisfies.
 *
 * NETA: table 100.1 (read). IEC 62271 gives none; practice is 5 kV on medium-voltage circuits up to
 * 72.5 kV, 500 V or 1 kV on low-voltage ones.
 *
 * @param ratedkV rated voltage, kV, above 0
 * @returns `none` beyond 72.5 kV for IEC, `range` for a voltage not above 0
 * @example insulationTestVoltage(12, { basis: "NETA" }) // 2500
 * @example insulationTestVoltage(12, { basis: "IEC" }) // 5000
 */
export const insulationTestVoltage = (ratedkV: number, chosen: Chosen): Result<Criterion> =>
  notPositive("Rated voltage", ratedkV, "kV") ??
  (chosen.basis === "NETA"
    ? figureOf(rowOf(netaStandard(chosen).insulation, ratedkV), ({ testV }) => testV)
    : figureOf(rowOf(testVoltagesByHabit, ratedkV), ({ testV }) => testV));
