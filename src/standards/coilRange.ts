import { notPositive } from "../engineering/notPositive";
import { answer, type Result, refuse } from "../quantities/result";
import { ansiCoilSource, ansiCoils, type CoilRange, iecCoilSource, iecCoils } from "./coilTable";
import type { Basis, Criterion } from "./criterion";
import { tidy } from "./tidy";

/** A coil: what it does, what supplies it, and the basis whose range applies. */
export interface Coil {
  readonly operation: "closing" | "opening";
  readonly wave: "AC" | "DC";
  readonly basis: Basis;
}

/**
 * Voltages that a closing coil or shunt release must work between, V.
 *
 * IEC 62271-1 (memory): closing 85 % to 110 %, opening 70 % to 110 % DC, 85 % to 110 % AC. NETA: the
 * ranges of ANSI/IEEE C37.06 for 48, 125 and 250 V DC (read in breaker makers' tables). The maker's
 * plate comes first.
 *
 * @param ratedV rated control voltage, V, above 0
 * @returns `none` where the basis has no row, `range` for a voltage not above 0
 * @example coilRange(110, { operation: "opening", wave: "DC", basis: "IEC" }) // { least: 77, most: 121 }
 */
export const coilRange = (
  ratedV: number,
  { operation, wave, basis }: Coil,
): Result<Criterion<CoilRange>> => {
  const refusal = notPositive("Rated control voltage", ratedV, "V");
  if (refusal) return refusal;
  if (basis === "IEC") {
    const { least, most } = iecCoils[operation][wave];
    return answer({
      value: { least: tidy(ratedV * least), most: tidy(ratedV * most) },
      source: iecCoilSource,
    });
  }
  const row = wave === "DC" ? ansiCoils[operation].get(ratedV) : undefined;
  return row
    ? answer({ value: row, source: ansiCoilSource })
    : refuse(
        "none",
        `No range is known here for ${ratedV} V ${wave} under NETA: rows are 48, 125 and 250 V DC. The maker's plate gives it.`,
      );
};
