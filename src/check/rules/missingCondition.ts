import { type Column, verdictOf } from "../../records/kind";
import { blanksByPlace } from "../blanksByPlace";
import { blanks, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";

/** A reading whose judgement needs a condition that was not recorded. */
export const missingCondition: Rule = {
  id: "missing-condition",
  title: "A condition not recorded",
  finds:
    "a reading without the condition that its judgement needs: temperature, test voltage, an answer",
  why: "The reading cannot be corrected or held against its limit.",
  satisfies: "the condition, as it was on the day",
  quiet:
    "for rows without a reading, and conditions that the row or lineup does without; what no line of a user's own layout has is reported once for its block",
  reads: "row",
  rows: (table, context) => {
    const conditions = table.kind.columns.filter(({ need }) => need === "condition");
    const byPlace = blanksByPlace(table);
    return (row, stored, judged): Finding[] | undefined => {
      if (verdictOf(judged) === "Missing") return undefined;
      const blank = blanks(conditions, stored, context.lineup);
      if (!blank) return undefined;
      const { absent, lacking } = byPlace(row, blank);
      const found = (columns: readonly Column[], whose: string): Finding[] =>
        columns[0]
          ? [
              {
                rule: "missing-condition",
                weight: "query",
                ...where(table, row, columns[0].id),
                message: `${whose}: reading recorded without ${columns.map(({ header }) => `"${header}"`).join(", ")}; without it the reading cannot be fully judged.`,
              },
            ]
          : [];
      return [
        ...found(absent, `${rowName(table, row)}, and every other line of the block`),
        ...found(lacking, rowName(table, row)),
      ];
    };
  },
};
