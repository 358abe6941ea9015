import { notPositive } from "../engineering/notPositive";
import { type Result, refuse } from "../quantities/result";
import type { Criterion } from "./criterion";
import type { Chosen } from "./editions";
import { netaStandard } from "./netaEditions";
import { figureOf, rowOf } from "./table";

/**
 * Least acceptable insulation resistance of a main circuit at 20 °C, MΩ.
 *
 * NETA: table 100.1 (read). Rated maximum voltages belong to the row of their nominal voltage, 27 kV to
 * 25 kV and 38 kV to 34.5 kV; any other takes the next higher row. IEC 62271 gives no minimum.
 *
 * @param ratedkV rated voltage, kV, above 0
 * @returns `none` for IEC, `range` for a voltage not above 0
 * @example insulationMinimum(12, { basis: "NETA" }) // 5000
 */
export const insulationMinimum = (ratedkV: number, chosen: Chosen): Result<Criterion> =>
  notPositive("Rated voltage", ratedkV, "kV") ??
  (chosen.basis === "NETA"
    ? figureOf(rowOf(netaStandard(chosen).insulation, ratedkV), ({ megohm }) => megohm)
    : refuse("none", (text) => text.standards.noMinimum));
