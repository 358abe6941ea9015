import type { Criterion, Source } from "./criterion";

const source: Source = {
  document: "ANSI/NETA ATS",
  edition: "2003",
  place: "table 100.18, actions by temperature rise",
  certainty: "quoted",
  by: "a published extract; a reference page quotes the same of MTS without its edition",
};

/** Rise of a connection over a similar one under a similar load, K: up to this a possible deficiency at most. */
export const riseOverSimilar: Criterion = { value: 3, source };
/** Rise over a similar one above which it is a major discrepancy, K. */
export const wrongOverSimilar: Criterion = { value: 15, source };
/** Rise of a connection over the air under load, K: up to this a possible deficiency at most. */
export const riseOverAir: Criterion = { value: 10, source };
/** Rise over the air above which it is a major discrepancy, K. */
export const wrongOverAir: Criterion = { value: 40, source };
