import { answer, type Result, refuse } from "../quantities/result";
import { iecCableSource, iecCableTests, vlfCableSource } from "./cableTable";
import type { CableWave } from "./cableTest";
import type { Basis, Criterion } from "./criterion";

/** Least duration at very low frequency, min (IEEE 400.2-2013, read); 60 min are preferred. */
const VLF_MINUTES = 30;

/**
 * Least duration of the withstand test of a cable after laying, min.
 *
 * - IEC: IEC 60502-2:2014 (memory): AC 24 h, DC 15 min
 * - NETA: IEEE 400.2-2013 (read): very low frequency 30 min
 *
 * @returns `none` where the basis gives no such test
 * @example cableMinutes("IEC", "DC") // 15
 * @example cableMinutes("NETA", "VLF") // 30
 */
export const cableMinutes = (basis: Basis, wave: CableWave): Result<Criterion> => {
  if (basis === "NETA")
    return wave === "VLF"
      ? answer({ value: VLF_MINUTES, source: vlfCableSource })
      : refuse("none", `No ${wave} duration is known here for NETA: take VLF or IEC.`);
  return wave === "VLF"
    ? refuse("none", "No very-low-frequency duration is known here for IEC: take AC, DC or NETA.")
    : answer({
        value: iecCableTests[wave].minutes,
        source: { ...iecCableSource, note: iecCableTests[wave].duration },
      });
};
