import { type Column, verdictOf } from "../../records/kind";
import { blanksByPlace } from "../blanksByPlace";
import { blanks, overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";

/** A reading without its date, name, instrument, or a condition that goes on record with it. */
export const missingTrail: Rule = {
  id: "missing-trail",
  title: "Who, when, with what",
  finds: "a reading without its date, name, instrument, or a condition that goes on record with it",
  why: "A reading that nobody signed, on no day, by no instrument, proves nothing to others.",
  satisfies: "the date, the name, the instrument",
  quiet:
    "for rows without a reading; what no line of a user's own layout has is reported once for its block",
  reads: "table",
  find: (table, context) => {
    const trail = table.kind.columns.filter(({ need }) => need === "trail");
    const byPlace = blanksByPlace(table);
    return overRows(table, (row, stored, judged) => {
      if (verdictOf(judged) === "Missing") return undefined;
      const blank = blanks(trail, stored, context.lineup);
      if (!blank) return undefined;
      const { absent, lacking } = byPlace(row, blank);
      const found = (columns: readonly Column[], whose: string): Finding[] =>
        columns[0]
          ? [
              {
                rule: "missing-trail",
                weight: "query",
                ...where(table, row, columns[0].id),
                message: `${whose} ${columns.map(({ header }) => `"${header}"`).join(", ")}.`,
              },
            ]
          : [];
      return [
        ...found(
          absent,
          `${rowName(table, row)}, and every other line of the block: reading recorded without`,
        ),
        ...found(lacking, `${rowName(table, row)}: reading recorded without`),
      ];
    }).map(({ finding }) => finding);
  },
};
