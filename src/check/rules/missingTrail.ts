import { verdictOf } from "../../records/kind";
import { blanks, overRows, type Rule, rowName, where } from "../context";

/** A reading without its date, name, instrument, or a condition that goes on record with it. */
export const missingTrail: Rule = {
  id: "missing-trail",
  find: (context) =>
    overRows(context, (table) => {
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
    }),
};
