import { verdictOf } from "../../records/kind";
import { blanks, type Rule, rowName, where } from "../context";

/** A reading without its date, name, instrument, or a condition that goes on record with it. */
export const missingTrail: Rule = {
  id: "missing-trail",
  title: "Who, when, with what",
  finds: "a reading without its date, name, instrument, or a condition that goes on record with it",
  why: "A reading that nobody signed, on no day, by no instrument, proves nothing to others.",
  satisfies: "the date, the name, the instrument",
  quiet: "for rows without a reading",
  reads: "row",
  rows: (table, context) => {
    const trail = table.kind.columns.filter(({ need }) => need === "trail");
    return (row, stored, judged) => {
      if (verdictOf(judged) === "Missing") return undefined;
      const blank = blanks(trail, stored, context.lineup);
      return blank?.[0]
        ? {
            rule: "missing-trail",
            weight: "query",
            ...where(table, row, blank[0].id),
            message: `${rowName(table, row)}: a reading without ${blank.map(({ header }) => `"${header}"`).join(", ")}.`,
          }
        : undefined;
    };
  },
};
