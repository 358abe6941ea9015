import { type Column, verdictOf } from "../../records/kind";
import { amongBlank } from "../among/amongRows";
import { blanks, overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";
import { blanksByPlace } from "../progress/blanksByPlace";

/** A reading without its date, name, instrument, or a condition that goes on record with it. */
export const missingTrail: Rule = {
  id: "missing-trail",
  reach: "panel",
  reads: "table",
  find: (table, context) => {
    const trail = table.kind.columns.filter(({ need }) => need === "trail");
    const byPlace = blanksByPlace(table);
    return overRows(
      table,
      (row, stored, judged) => {
        if (verdictOf(judged) === "Missing") return undefined;
        const blank = blanks(trail, stored, context.lineup);
        if (!blank) return undefined;
        const { absent, lacking } = byPlace(row, blank);
        const found = (columns: readonly Column[], wholeBlock: boolean): Finding[] =>
          columns[0]
            ? [
                {
                  rule: "missing-trail",
                  weight: "query",
                  ...where(table, row, columns[0].id),
                  message: context.text.rules["missing-trail"].message(
                    rowName(table, row),
                    columns.map(({ header }) => header),
                    wholeBlock,
                  ),
                },
              ]
            : [];
        return [...found(absent, true), ...found(lacking, false)];
      },
      amongBlank(table, trail),
    ).map(({ finding }) => finding);
  },
};
