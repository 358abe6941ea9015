import { altitudeFactor } from "../../engineering/altitudeFactor";
import { type Rule, said, where } from "../context";

/** Up to this altitude, m, external insulation needs no factor (IEC 62271-1:2011, read). */
const FREE = 1000;

/** A site so high that the external insulation needs a higher rated level: was it chosen so? */
export const altitude: Rule = {
  id: "altitude",
  find: ({ lineup, tables }) => {
    const metres = lineup.ratings.altitudeM;
    const factor = altitudeFactor(metres);
    const table = tables.find(({ kind }) => kind.id === "withstand");
    if (metres <= FREE || !factor.ok || !table) return [];
    return [
      {
        rule: "altitude",
        weight: "query",
        ...where(table, 0, "basekV"),
        message: `The site stands at ${metres} m: external insulation needs ${said(factor.value)} times the level that serves up to ${FREE} m. Show from the maker's documents that the rated level of ${lineup.ratings.voltagekV} kV was chosen for it${lineup.withstand.gapM === undefined ? ", and agree with the maker whether the test voltage is to be corrected to the air of the day" : ""}.`,
        source: "IEC 62271-1:2011, altitude factor (read)",
      },
    ];
  },
};
