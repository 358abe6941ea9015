import { type Rule, whereTable } from "../context";
import type { Finding } from "../findings/finding";

/** A column that a record table of ours has lost, or whose header was renamed. */
export const missingColumn: Rule = {
  id: "missing-column",
  reads: "table",
  find: ({ kind, table, at }, { text }) =>
    kind.columns
      .filter(({ id, aside }) => !table.ownLayout && !at.has(id) && !aside)
      .map(
        ({ header, role }): Finding => ({
          rule: "missing-column",
          weight: role === "note" ? "note" : "stop",
          ...whereTable({ kind, table }),
          message: text.rules["missing-column"].message(table.name, header),
          column: header,
          expected: header,
        }),
      ),
};
