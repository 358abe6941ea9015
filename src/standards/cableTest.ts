import { notPositive } from "../engineering/notPositive";
import { answer, type Result, refuse } from "../quantities/result";
import { iecCableSource, iecCables, iecCableTests, vlfCableSource, vlfCables } from "./cableTable";
import type { Basis, Criterion } from "./criterion";
import { rowFor } from "./rowFor";

export const CABLE_WAVES = ["AC", "DC", "VLF"] as const;
export type CableWave = (typeof CABLE_WAVES)[number];

/** The wave that each basis gives a value for first. */
export const usualCableWave: Readonly<Record<Basis, CableWave>> = { IEC: "AC", NETA: "VLF" };

/**
 * Withstand voltage of a medium-voltage cable after laying, phase to earth, kV (AC and VLF: rms).
 *
 * - IEC: IEC 60502-2:2014 (memory): AC U0 for 24 h, DC 4 U0 for 15 min
 * - NETA: IEEE 400.2-2013, table 3 (read): very low frequency, acceptance, 30 min at least
 *
 * A voltage between two rows takes the higher row. Local rules differ; the cable maker's come first.
 *
 * @param ratedkV rated voltage, kV: for IEC the highest voltage of the cable's system or its nominal
 *   voltage, 12 or 10 for a 6/10 kV cable, above 1; for NETA the phase-to-phase voltage
 * @returns `none` where the basis gives no such test, `range` for a voltage not above 0
 * @example cableTest(12, "IEC", "DC") // 24
 * @example cableTest(15, "NETA", "VLF") // 21
 */
export const cableTest = (ratedkV: number, basis: Basis, wave: CableWave): Result<Criterion> =>
  notPositive("Rated voltage", ratedkV, "kV") ??
  (ratedkV <= LOW_VOLTAGE
    ? refuse(
        "none",
        `No withstand test is known here for a ${ratedkV} kV cable: the rows begin above 1 kV.`,
      )
    : RULES[basis](ratedkV, wave));

const LOW_VOLTAGE = 1;

const RULES: Readonly<Record<Basis, (ratedkV: number, wave: CableWave) => Result<Criterion>>> = {
  IEC: (ratedkV, wave) => {
    if (wave === "VLF")
      return refuse(
        "none",
        "No very-low-frequency value is known here for IEC: take AC, DC or NETA.",
      );
    const { times, duration } = iecCableTests[wave];
    const row = rowFor(iecCables, ratedkV);
    return row
      ? answer({ value: row.u0 * times, source: { ...iecCableSource, note: duration } })
      : refuse("none", `IEC 60502-2 has no row for ${ratedkV} kV: its rows end at 36 kV.`);
  },
  NETA: (ratedkV, wave) => {
    if (wave !== "VLF")
      return refuse("none", `No ${wave} value is known here for NETA: take VLF or IEC.`);
    const row = rowFor(vlfCables, ratedkV);
    return row
      ? answer({ value: row.acceptance, source: vlfCableSource })
      : refuse("none", `IEEE 400.2 has no row for ${ratedkV} kV: its rows end at 35 kV.`);
  },
};
