import { altitudeFactor } from "../../engineering/altitudeFactor";
import { type Rule, said, whereTable } from "../context";

/** Up to this altitude, m, external insulation needs no factor (IEC 62271-1:2011, read). */
const FREE = 1000;

/** A site so high that the external insulation needs a higher rated level: was it chosen so? */
export const altitude: Rule = {
  id: "altitude",
  reads: "book",
  of: ["withstand"],
  find: ({ lineup, tables, text }) => {
    const metres = lineup.ratings.altitudeM;
    const factor = altitudeFactor(metres);
    const table = tables.find(({ kind }) => kind.id === "withstand");
    const { message, source } = text.rules.altitude;
    if (metres <= FREE || !factor.ok || !table) return [];
    return [
      {
        rule: "altitude",
        weight: "query",
        ...whereTable(table),
        message: message(
          metres,
          said(factor.value),
          FREE,
          lineup.ratings.voltagekV,
          lineup.withstand.gapM === undefined,
        ),
        source,
      },
    ];
  },
};
