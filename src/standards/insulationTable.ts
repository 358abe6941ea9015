import type { Source } from "./criterion";

/** One row: rated voltage, kV; DC test voltage, V; least insulation resistance at 20 °C, MΩ. */
interface InsulationRow {
  readonly ratedkV: number;
  readonly testV: number;
  readonly megohm: number;
}

export const insulationSource: Source = {
  document: "ANSI/NETA ATS",
  edition: "2025",
  place: "table 100.1",
  certainty: "read",
  note: "the same in MTS-2019",
};

/**
 * Recommended minimum insulation resistance, ANSI/NETA table 100.1 in MTS-2015, MTS-2019 and ATS-2025
 * (read). One copy prints 34000 V for 34500 V. The last row is printed as "46000 and above".
 */
export const insulationTable: readonly InsulationRow[] = [
  { ratedkV: 0.25, testV: 500, megohm: 25 },
  { ratedkV: 0.6, testV: 1000, megohm: 100 },
  { ratedkV: 1, testV: 1000, megohm: 100 },
  { ratedkV: 2.5, testV: 1000, megohm: 500 },
  { ratedkV: 5, testV: 2500, megohm: 1500 },
  { ratedkV: 8, testV: 2500, megohm: 2500 },
  { ratedkV: 15, testV: 2500, megohm: 5000 },
  { ratedkV: 25, testV: 5000, megohm: 10000 },
  { ratedkV: 34.5, testV: 5000, megohm: 100000 },
  { ratedkV: Number.POSITIVE_INFINITY, testV: 5000, megohm: 100000 },
];
