import { isBlank, verdictOf } from "../../records/kind";
import { overRows, type Rule, rowName, where } from "../context";

/** A reading without its date, name, instrument, or a condition that goes on record with it. */
export const missingTrail: Rule = {
  id: "missing-trail",
  find: (context) =>
    overRows(context, (table, row, stored, judged) => {
      if (verdictOf(judged) === "Missing") return undefined;
      const blank = table.kind.columns.filter(
        ({ id, need, needed }) =>
          need === "trail" && isBlank(stored[id]) && (needed?.(stored, context.lineup) ?? true),
      );
      const first = blank[0];
      return first
        ? {
            rule: "missing-trail",
            weight: "query",
            ...where(table, row, first.id),
            message: `${rowName(table, row)}: a reading without ${blank.map(({ header }) => `"${header}"`).join(", ")}.`,
          }
        : undefined;
    }),
};
