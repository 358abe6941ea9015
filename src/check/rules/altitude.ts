import { altitudeFactor } from "../../engineering/altitudeFactor";
import { type Rule, said, whereTable } from "../context";

/** Up to this altitude, m, external insulation needs no factor (IEC 62271-1:2011, read). */
const FREE = 1000;

/** A site so high that the external insulation needs a higher rated level: was it chosen so? */
export const altitude: Rule = {
  id: "altitude",
  title: "A site above 1000 m",
  finds: "a site so high that external insulation needs a higher rated level than up to 1000 m",
  why: "Thinner air withstands less: a level that serves at sea level may flash over on a mountain (IEC 62271-1).",
  satisfies:
    "the maker's document that the rated level was chosen for the altitude; a concession that names it",
  quiet: "up to 1000 m, and where the lineup has no withstand test",
  reads: "book",
  of: ["withstand"],
  find: ({ lineup, tables }) => {
    const metres = lineup.ratings.altitudeM;
    const factor = altitudeFactor(metres);
    const table = tables.find(({ kind }) => kind.id === "withstand");
    if (metres <= FREE || !factor.ok || !table) return [];
    return [
      {
        rule: "altitude",
        weight: "query",
        ...whereTable(table),
        message: `The site is at ${metres} m: external insulation needs ${said(factor.value)} times the level that serves up to ${FREE} m. Show from the maker's documents that the rated level of ${lineup.ratings.voltagekV} kV was chosen for it${lineup.withstand.gapM === undefined ? ", and agree with the maker whether the test voltage is to be corrected to the air of the day" : ""}.`,
        source: "IEC 62271-1:2011, altitude factor (read)",
      },
    ];
  },
};
