import type { planFor } from "../../src/sheets/plan/plan";
import { filledPlan, WILD } from "../support/fill";
import { equipped, longLineup } from "../support/lineups";

/** Generated lineups over bases, corrections and waves, with entries over all that may be typed. */
export const CASES = {
  "neta-solid": () =>
    filledPlan(
      equipped(longLineup(30, { insulation: { correction: "solid", baseC: 20 } })),
      1,
      WILD,
    ),
  "neta-oil-40-dc-air": () =>
    filledPlan(
      equipped(
        longLineup(30, {
          insulation: { correction: "oil", baseC: 40 },
          withstand: { wave: "DC", seconds: 60, gapM: 0.16 },
        }),
      ),
      2,
      WILD,
    ),
  "iec-halving-air": () =>
    filledPlan(
      equipped(
        longLineup(30, {
          basis: "IEC",
          insulation: { correction: "halving", baseC: 20 },
          withstand: { wave: "AC", seconds: 60, gapM: 0.12 },
          criteria: [
            {
              from: "project",
              quantity: "insulation minimum MΩ",
              value: 2000,
              document: "invented",
            },
            { from: "project", quantity: "joint resistance µΩ", value: 40, document: "invented" },
          ],
        }),
      ),
      3,
      WILD,
    ),
  "iec-none-36": () => {
    const lineup = longLineup(20, {
      basis: "IEC",
      insulation: { correction: "none", baseC: 20 },
    });
    return filledPlan(
      equipped({ ...lineup, ratings: { ...lineup.ratings, voltagekV: 33 } }),
      4,
      WILD,
    );
  },
} satisfies Record<string, () => ReturnType<typeof planFor>>;

export type CaseName = keyof typeof CASES;
