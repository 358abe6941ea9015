import { verdictOf } from "../../records/kind";
import { blanks, type Rule, rowName, where } from "../context";

/** A reading whose judgement needs a condition that was not recorded. */
export const missingCondition: Rule = {
  id: "missing-condition",
  title: "A condition not recorded",
  finds:
    "a reading without the condition that its judgement needs: temperature, test voltage, an answer",
  why: "The reading cannot be corrected or held against its limit.",
  satisfies: "the condition, as it was on the day",
  quiet: "for rows without a reading, and conditions that the row or lineup does without",
  reads: "row",
  rows: (table, context) => {
    const conditions = table.kind.columns.filter(({ need }) => need === "condition");
    return (row, stored, judged) => {
      if (verdictOf(judged) === "Missing") return undefined;
      const blank = blanks(conditions, stored, context.lineup);
      return blank?.[0]
        ? {
            rule: "missing-condition",
            weight: "query",
            ...where(table, row, blank[0].id),
            message: `${rowName(table, row)}: a reading without ${blank.map(({ header }) => `"${header}"`).join(", ")}; record it, or the reading cannot be judged in full.`,
          }
        : undefined;
    };
  },
};
