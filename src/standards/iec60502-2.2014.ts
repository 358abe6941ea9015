import type { Source } from "./criterion";
import type { Rated, RatedTable } from "./table";

/** A cable by its voltages, kV: U0/U (U_m). */
export interface CableVoltages extends Rated {
  readonly u0: number;
  readonly u: number;
}

/** The cables of the standard, by the highest voltage of their system U_m. */
export const cables: RatedTable<CableVoltages, "stress"> = {
  title: "Cables: U0/U (U_m), kV",
  acts: "stress",
  source: {
    document: "IEC 60502-2",
    edition: "2014",
    place: "designation of the cables, U0/U (U_m)",
    certainty: "quoted",
    by: "cable makers' type test reports and catalogues",
  },
  columns: { u0: "U0 kV", u: "U kV" },
  rows: [
    { ratedkV: 7.2, u0: 3.6, u: 6 },
    { ratedkV: 12, u0: 6, u: 10 },
    { ratedkV: 17.5, u0: 8.7, u: 15 },
    { ratedkV: 24, u0: 12, u: 20 },
    { ratedkV: 36, u0: 18, u: 30 },
  ],
};

const source = (place: string, note: string): Source => ({
  document: "IEC 60502-2",
  edition: "2014",
  place: `electrical tests after installation, ${place}`,
  certainty: "signed",
  note,
});

/** Tests after laying: how many times which voltage of the cable, kV, and for how long, min. */
export const afterLaying = {
  ACu0: { of: "u0", times: 1, minutes: 1440, source: source("AC, U0", "U0 for 24 h") },
  ACu: { of: "u", times: 1, minutes: 5, source: source("AC, U", "U, phase to phase, for 5 min") },
  DC: { of: "u0", times: 4, minutes: 15, source: source("DC", "4 U0 for 15 min") },
  VLF: {
    of: "u0",
    times: 3,
    minutes: 15,
    source: source("0.1 Hz", "3 U0 for 15 min; HD 620 asks for 30 to 60 min"),
  },
} as const;
