import { type Chosen, editionOf } from "./editions";
import * as ats2025 from "./neta-ats.2025";
import * as mts2015 from "./neta-mts.2015";
import * as mts2019 from "./neta-mts.2019";

const NETA = {
  "ATS-2025": ats2025,
  "MTS-2019": mts2019,
  // What was not read in the older edition is taken from the one after it, and says so.
  "MTS-2015": { ...mts2019, ...mts2015 },
} as const;

/** The acceptance or maintenance standard that applies. */
export const netaStandard = (chosen: Chosen): (typeof NETA)[keyof typeof NETA] =>
  NETA[editionOf("ANSI/NETA", chosen)];
