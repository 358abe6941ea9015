import { type Column, verdictOf } from "../../records/kind";
import { amongBlank } from "../among/amongRows";
import { blanks, overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";
import { blanksByPlace } from "../progress/blanksByPlace";

/** A reading whose judgement needs a condition that was not recorded. */
export const missingCondition: Rule = {
  id: "missing-condition",
  reach: "panel",
  // What a block has no place for is told at its first reading, which any edit may move.
  reads: "table",
  find: (table, context) => {
    const conditions = table.kind.columns.filter(({ need }) => need === "condition");
    const byPlace = blanksByPlace(table);
    return overRows(
      table,
      (row, stored, judged): Finding[] | undefined => {
        if (verdictOf(judged) === "Missing") return undefined;
        const blank = blanks(conditions, stored, context.lineup);
        if (!blank) return undefined;
        const { absent, lacking } = byPlace(row, blank);
        const found = (columns: readonly Column[], wholeBlock: boolean): Finding[] =>
          columns[0]
            ? [
                {
                  rule: "missing-condition",
                  weight: "query",
                  ...where(table, row, columns[0].id),
                  message: context.text.rules["missing-condition"].message(
                    rowName(table, row),
                    columns.map(({ header }) => header),
                    wholeBlock,
                  ),
                },
              ]
            : [];
        return [...found(absent, true), ...found(lacking, false)];
      },
      amongBlank(table, conditions),
    ).map(({ finding }) => finding);
  },
};
