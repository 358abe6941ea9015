import { answer, type Result } from "../quantities/result";
import type { Criterion } from "./criterion";
import type { Chosen } from "./editions";
import { insulationMinimum } from "./insulationMinimum";
import { insulationTestVoltage } from "./insulationTestVoltage";
import { cableNote } from "./neta-mts.2019";
import { cableTypical } from "./practice";
import { noted } from "./table";

/**
 * Insulation resistance that is typical of a cable before connection, MΩ. Below it a cable is looked into
 * and not passed; by itself it fails none: length, temperature and the maker's data decide. NETA: table
 * 100.1 with its note 6 (read); IEC gives none, gigaohms are usual (practice).
 *
 * @param ratedkV rated voltage of the cable, kV, above 0
 * @example cableTypicalMinimum(15, { basis: "NETA" }) // 5000
 */
export const cableTypicalMinimum = (ratedkV: number, chosen: Chosen): Result<Criterion> => {
  if (chosen.basis === "IEC") return answer(cableTypical);
  const found = insulationMinimum(ratedkV, chosen);
  return found.ok
    ? answer({ ...found.value, source: noted(found.value.source, cableNote) })
    : found;
};

/** Least DC test voltage for the insulation resistance of a cable, V: as for gear of its voltage. */
export const cableTestVoltage = insulationTestVoltage;
