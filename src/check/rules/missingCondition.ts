import { isBlank, verdictOf } from "../../records/kind";
import { headerOf, overRows, type Rule, rowName, where } from "../context";

/** A reading whose judgement needs a condition that was not recorded. */
export const missingCondition: Rule = {
  id: "missing-condition",
  find: (context) =>
    overRows(context, (table, row, stored, judged) => {
      if (verdictOf(judged) === "Missing") return undefined;
      const blank = table.kind.columns.filter(
        ({ id, need, needed }) =>
          need === "condition" && isBlank(stored[id]) && (needed?.(stored, context.lineup) ?? true),
      );
      const first = blank[0];
      return first
        ? {
            rule: "missing-condition",
            weight: "query",
            ...where(table, row, first.id),
            message: `${rowName(table, row)}: a reading without ${blank.map(({ id }) => `"${headerOf(table, id)}"`).join(", ")}; record it, or the reading cannot be judged in full.`,
          }
        : undefined;
    }),
};
