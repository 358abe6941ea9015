import { type Rule, whereTable } from "../context";
import type { Finding } from "../finding";

/** A column that a record table of ours has lost, or whose header was renamed. */
export const missingColumn: Rule = {
  id: "missing-column",
  title: "A column lost",
  finds: "a column that a record table of ours no longer has",
  why: "What stood in it is not judged, and formulas that used it give errors.",
  satisfies: "the column given its header again",
  quiet: "for columns added to the table",
  reads: "table",
  find: ({ kind, table, at }) =>
    kind.columns
      .filter(({ id }) => !table.ownLayout && !at.has(id))
      .map(
        ({ header, role }): Finding => ({
          rule: "missing-column",
          weight: role === "note" ? "note" : "stop",
          ...whereTable({ kind, table }),
          message: `The table "${table.name}" has no column "${header}": it was deleted, or its header was changed. Give the column that header again.`,
          column: header,
          expected: header,
        }),
      ),
};
