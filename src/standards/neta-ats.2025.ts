import type { Source } from "./criterion";
import * as mts2019 from "./neta-mts.2019";

/** Figures that were read in the maintenance standard; the acceptance standard has the same tables. */
const of2025 = (source: Source): Source => ({
  ...source,
  document: "ANSI/NETA ATS",
  edition: "2025",
  certainty: "quoted",
  by: `ANSI/NETA MTS-2019, which has the same table (${source.certainty}${source.by ? `: ${source.by}` : ""})`,
});

/** Table 100.1 itself was read in a copy of this edition. */
export const insulation: typeof mts2019.insulation = {
  ...mts2019.insulation,
  source: {
    ...mts2019.insulation.source,
    document: "ANSI/NETA ATS",
    edition: "2025",
    by: "a published copy",
  },
};

export const site: typeof mts2019.site = {
  ...mts2019.site,
  source: of2025(mts2019.site.source),
};

export const secondaryMinimum = {
  ...mts2019.secondaryMinimum,
  source: of2025(mts2019.secondaryMinimum.source),
};
export const secondaryTestVoltage = {
  ...mts2019.secondaryTestVoltage,
  source: of2025(mts2019.secondaryTestVoltage.source),
};
export const controlMinimum = {
  ...mts2019.controlMinimum,
  source: of2025(mts2019.controlMinimum.source),
};
export const controlTestVoltage: typeof mts2019.controlTestVoltage = {
  ...mts2019.controlTestVoltage,
  source: of2025(mts2019.controlTestVoltage.source),
};
