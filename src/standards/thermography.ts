import type { Criterion, Source } from "./criterion";

const neta: Source = {
  document: "ANSI/NETA MTS",
  edition: "not named",
  place: "table 100.18, actions by temperature rise",
  certainty: "quoted",
  by: "a reference page on temperature criteria; an extract of ATS-2003 gives the same",
};
const bolted: Source = {
  document: "IEC 60694",
  edition: "1996",
  place: "table 3, bolted connections in air: 50 K bare, 65 K tinned, 75 K silvered",
  certainty: "read",
  by: "a published copy",
};

/** A temperature rise up to which nothing is asked, and the one above which it is wrong, K. */
interface Rise {
  readonly study: Criterion;
  readonly wrong: Criterion;
}
const rise = (study: number, wrong: number, source: Source): Rise => ({
  study: { value: study, source },
  wrong: { value: wrong, source },
});

/**
 * Temperature rises of a connection under load: over a similar one under a similar load, to 3 K a possible and to
 * 15 K a probable deficiency, above it a major discrepancy; over the air to 10 K, to 40 K, above it. Where a similar
 * one is as warm, the air's limit is what the standard of the gear allows a bolted connection, by its plating.
 */
export const rises = {
  similar: rise(3, 15, neta),
  air: rise(10, 40, neta),
  airBesideSimilar: rise(50, 75, bolted),
} as const;

/** A spot may read so much colder than what it is compared with, K: more, and the two were mixed up. */
export const coldest: Criterion = {
  value: -2,
  source: {
    document: "Common practice",
    edition: "",
    place: "how closely two spots are read",
    certainty: "practice",
  },
};

/** Part of its rated current below which a cool connection proves nothing. */
export const leastLoad: Criterion = {
  value: 0.4,
  source: {
    document: "NFPA 70B",
    edition: "1998",
    place: "18-17.5.2",
    certainty: "quoted",
    by: "a published page",
  },
};
