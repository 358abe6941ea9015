import { notPositive } from "../engineering/notPositive";
import { answer, type Result, refuse } from "../quantities/result";
import type { CoilRange, UndervoltageRange } from "./coil";
import type { Basis, Criterion } from "./criterion";
import * as iec from "./iec62271-1.2017";
import * as ansi from "./ieeeC37.06.2000";
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
 * ranges of ANSI/IEEE C37.06 for 24, 48, 125 and 250 V DC, 120 and 240 V AC (read in breaker makers'
 * tables); where these differ, `lowest` is the lower of two least voltages. The maker's plate comes first.
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
  const parts = basis === "IEC" ? iec.coils.rows[`${operation} ${wave}`] : undefined;
  if (parts)
    return answer({
      value: { least: tidy(ratedV * parts.least), most: tidy(ratedV * parts.most) },
      source: iec.coils.source,
    });
  const row = ansi.coils.rows[`${operation} ${ratedV} ${wave}`];
  return row
    ? answer({ value: row, source: ansi.coils.source })
    : refuse("none", (text) => text.standards.noCoil(ratedV, wave));
};

/**
 * Voltages of an undervoltage release, V: it has to pick up at `pickupMost` or below, and to drop out between the
 * two others. IEC 62271-1: 85 %, 35 % to 70 % (memory); NETA: as one maker prints them (read).
 *
 * @param ratedV rated control voltage, V, above 0
 * @returns `none` where the basis has no row, `range` for a voltage not above 0
 * @example undervoltageRange(125, "DC", "NETA") // { pickupMost: 100, dropoutLeast: 38, dropoutMost: 75 }
 */
export const undervoltageRange = (
  ratedV: number,
  wave: "AC" | "DC",
  basis: Basis,
): Result<Criterion<UndervoltageRange>> => {
  const refusal = notPositive("Rated control voltage", ratedV, "V");
  if (refusal) return refusal;
  if (basis === "IEC") {
    const { pickupMost, dropoutLeast, dropoutMost } = iec.undervoltage;
    return answer({
      value: {
        pickupMost: tidy(ratedV * pickupMost),
        dropoutLeast: tidy(ratedV * dropoutLeast),
        dropoutMost: tidy(ratedV * dropoutMost),
      },
      source: iec.undervoltage.source,
    });
  }
  const row = ansi.undervoltage.rows[`${ratedV} ${wave}`];
  return row
    ? answer({ value: row, source: ansi.undervoltage.source })
    : refuse("none", (text) => text.standards.noRelease(ratedV, wave));
};

/** Rated control voltages that only alternating supplies have; other ones are taken for direct (IEC 62271-1, memory). */
const ALTERNATING = [100, 115, 120, 127, 208, 230, 240, 400];

/**
 * Whether a control supply is AC or DC, where the lineup does not say: by its rated voltage.
 *
 * @example supplyOf(230) // "AC"
 * @example supplyOf(110) // "DC"
 */
export const supplyOf = (ratedV: number): "AC" | "DC" =>
  ALTERNATING.includes(ratedV) ? "AC" : "DC";
