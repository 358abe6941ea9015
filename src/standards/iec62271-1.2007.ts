import type { Source } from "./criterion";
import { seriesI as seriesI2017, seriesII as seriesII2017 } from "./iec62271-1.2017";

const of2007 = (source: Source): Source => ({ ...source, edition: "2007" });

/** The levels of series I are those of 2017, which added 40.5 kV (no level of it was read). */
export const seriesI: typeof seriesI2017 = {
  ...seriesI2017,
  source: of2007(seriesI2017.source),
};

/** The levels of series II were revised in 2017 (its list of changes, read): what 2007 had decides nothing here. */
export const seriesII: typeof seriesII2017 = {
  ...seriesII2017,
  source: { ...of2007(seriesII2017.source), certainty: "memory" },
};
