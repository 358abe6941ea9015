import type { Source } from "./criterion";

/** Rated voltage of the cable's system (U_m), kV, and its voltage to earth U0, kV. */
interface CableRow {
  readonly ratedkV: number;
  readonly u0: number;
}

/** Cables by IEC 60502-2:2014, U0/U (U_m): 3.6/6 (7.2) to 18/30 (36) kV (memory). */
export const iecCables: readonly CableRow[] = [
  { ratedkV: 7.2, u0: 3.6 },
  { ratedkV: 12, u0: 6 },
  { ratedkV: 17.5, u0: 8.7 },
  { ratedkV: 24, u0: 12 },
  { ratedkV: 36, u0: 18 },
];

/** Test voltage after laying as a multiple of U0, and how long (IEC 60502-2:2014, memory). */
export const iecCableTests = {
  AC: { times: 1, duration: "24 h", minutes: 1440 },
  DC: { times: 4, duration: "15 min", minutes: 15 },
} as const;

export const iecCableSource: Source = {
  document: "IEC 60502-2",
  edition: "2014",
  place: "electrical tests after installation",
  certainty: "memory",
};

/** Acceptance test, very low frequency, sinusoidal, phase to earth, kV rms: IEEE 400.2-2013, table 3 (read). */
export const vlfCables = [
  { ratedkV: 5, acceptance: 10 },
  { ratedkV: 8, acceptance: 13 },
  { ratedkV: 15, acceptance: 21 },
  { ratedkV: 25, acceptance: 32, note: "row from a damaged layout" },
  { ratedkV: 35, acceptance: 44 },
] as const;

export const vlfCableSource: Source = {
  document: "IEEE 400.2",
  edition: "2013",
  place: "table 3, acceptance, rms",
  certainty: "read",
  note: "30 min at least, 60 min preferred",
};
