import { a1 } from "../../sheets/address";
import type { Rule } from "../context";
import type { Finding } from "../finding";

/** A column that a record table of ours has lost, or whose header was renamed. */
export const missingColumn: Rule = {
  id: "missing-column",
  find: ({ tables }) =>
    tables.flatMap(({ kind, table, at }) =>
      kind.columns
        .filter(({ id }) => !table.seen && !at.has(id))
        .map(
          ({ header, role }): Finding => ({
            rule: "missing-column",
            weight: role === "note" ? "note" : "stop",
            record: kind.id,
            sheet: table.sheet,
            address: a1(table.top, table.left),
            message: `The table "${table.name}" has no column "${header}": it was deleted, or its header was changed. Give the column that header again.`,
            expected: header,
          }),
        ),
    ),
};
