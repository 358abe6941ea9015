import type { CableVoltages } from "./iec60502-2.2014";
import type { RatedTable } from "./table";

/** National cables that are known by their nominal voltage U, kV, such as 6.35/11 (12) kV. */
export const nationalCables: RatedTable<CableVoltages, "stress"> = {
  title: "Cables by national designation: U0/U, kV",
  acts: "stress",
  source: {
    document: "BS 6622",
    edition: "2007",
    place: "designation of the cables, U0/U (U_m)",
    certainty: "quoted",
    by: "cable specifications and type test reports (6.35/11, 19/33 kV)",
    note: "edition from memory",
  },
  columns: { u0: "U0 kV", u: "U kV" },
  rows: [
    { ratedkV: 6.6, u0: 3.8, u: 6.6 },
    { ratedkV: 11, u0: 6.35, u: 11 },
    { ratedkV: 22, u0: 12.7, u: 22 },
    { ratedkV: 33, u0: 19, u: 33 },
  ],
};
