import type { Source } from "./criterion";
import * as mts2019 from "./neta-mts.2019";

const of2015 = (source: Source): Source => ({ ...source, edition: "2015" });

/** As in 2019 (read). */
export const insulation: typeof mts2019.insulation = {
  ...mts2019.insulation,
  source: { ...of2015(mts2019.insulation.source), by: "a published copy" },
};

/** As in 2019, but 37 kV where that prints 37.5 kV (read). */
export const site: typeof mts2019.site = {
  ...mts2019.site,
  source: { ...of2015(mts2019.site.source), by: "a published copy" },
  rows: mts2019.site.rows.map((row) => (row.DC === 37.5 ? { ...row, DC: 37 } : row)),
};
