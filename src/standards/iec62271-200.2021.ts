import type { Criterion, Source } from "./criterion";

/** Test after erection on site, where it is agreed: 80 % of the rated level, each phase for one minute. */
export const siteShare: Criterion = {
  value: 0.8,
  source: {
    document: "IEC 62271-200",
    edition: "2021",
    place: "test after erection on site",
    certainty: "quoted",
    by: "two gear makers' manuals (80 % of the rated level, each phase in turn, 60 s)",
    note: "where agreed; edition from memory",
  },
};

const continuity: Source = {
  document: "IEC 62271-200",
  edition: "2021",
  place: "continuity of the earthing circuit",
  certainty: "signed",
};

/** Continuity of the earthing circuit: at this direct current, A, the drop to the earthing point is no more than this, V. */
export const earthContinuity: Readonly<Record<"current" | "drop", Criterion>> = {
  current: { value: 30, source: continuity },
  drop: { value: 3, source: continuity },
};
