import { altitudeFactor } from "../../engineering/altitudeFactor";
import { type Rule, said, whereTable, withRole } from "../context";

/** Up to this altitude, m, external insulation needs no factor (IEC 62271-1:2011, read). */
const FREE = 1000;

const isWithstand = withRole("withstand");

/** A site so high that the external insulation needs a higher rated level: was it chosen so? */
export const altitude: Rule = {
  id: "altitude",
  reads: "book",
  of: isWithstand,
  find: ({ lineup, tables, text }) => {
    const metres = lineup.ratings.altitudeM;
    const factor = altitudeFactor(metres);
    const table = tables.find(({ kind }) => isWithstand(kind));
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
