import type { Criterion, Source } from "./criterion";
import type { Rated, RatedTable } from "./table";

/** Field test at very low frequency, sinusoidal, phase to earth, kV rms. */
export interface VlfLevel extends Rated {
  readonly installation: number;
  readonly acceptance: number;
  readonly maintenance: number;
}

const source: Source = {
  document: "IEEE 400.2",
  edition: "2013",
  place: "table 3, sinusoidal, rms",
  certainty: "read",
  by: "a test-set maker's reprint",
  note: "superseded by the 2024 edition, which has not been read",
};

/** By the rated voltage of the cable's system, phase to phase. The 25 kV row was first read in a damaged layout and agrees with a second copy. */
export const vlf: RatedTable<VlfLevel, "stress"> = {
  title: "Cables at very low frequency: kV rms, phase to earth",
  acts: "stress",
  source,
  columns: {
    installation: "installation kV",
    acceptance: "acceptance kV",
    maintenance: "maintenance kV",
  },
  rows: [
    { ratedkV: 5, installation: 9, acceptance: 10, maintenance: 7 },
    { ratedkV: 8, installation: 11, acceptance: 13, maintenance: 10 },
    { ratedkV: 15, installation: 19, acceptance: 21, maintenance: 16 },
    { ratedkV: 20, installation: 24, acceptance: 26, maintenance: 20 },
    { ratedkV: 25, installation: 29, acceptance: 32, maintenance: 24 },
    { ratedkV: 28, installation: 32, acceptance: 36, maintenance: 27 },
    { ratedkV: 30, installation: 34, acceptance: 38, maintenance: 29 },
    { ratedkV: 35, installation: 39, acceptance: 44, maintenance: 33 },
    { ratedkV: 46, installation: 51, acceptance: 57, maintenance: 43 },
  ],
};

/** Least duration, min; 60 min are preferred. */
export const minutes: Criterion = {
  value: 30,
  source: { ...source, place: "duration", note: "30 min at least, 60 min preferred" },
};

const assessment: Source = {
  document: "IEEE 400.2",
  edition: "2013",
  place: "dissipation factor of cables in service, PE based insulation",
  certainty: "memory",
};
const assessed = (study: number, action: number) => ({
  study: { value: study, source: assessment },
  action: { value: action, source: assessment },
});

/** Dissipation factor at very low frequency, in thousandths: up to `study` no action is required, above `action` action is. */
export const dissipation = {
  mean: assessed(4, 50),
  tipUp: assessed(5, 80),
  stability: assessed(0.1, 0.5),
} as const satisfies Record<string, Record<"study" | "action", Criterion>>;
