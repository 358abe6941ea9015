import { keyIds } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import { rowsOf } from "../../records/rowsOf";
import { a1 } from "../../sheets/address";
import type { Rule } from "../context";
import type { Finding } from "../finding";

/** A test that the lineup needs and the workbook lacks: a whole table, or a row of it. */
export const missingRow: Rule = {
  id: "missing-row",
  title: "A test missing",
  finds: "a row or a whole table that the lineup needs and the workbook lacks",
  why: "A test without a row is missed by everybody who reads the sheet.",
  satisfies: "the lineup built onto the workbook again, or the line in a mapped block",
  quiet: "for record kinds that the project leaves out",
  reads: "book",
  of: "every kind",
  find: (context) =>
    KINDS.flatMap((kind): Finding[] => {
      const tables = context.tables.filter((table) => table.kind === kind);
      const first = tables[0];
      if (!first)
        return rowsOf(kind, context.lineup)
          .slice(0, 1)
          .map(() => ({
            rule: "missing-row",
            weight: "stop",
            record: kind.id,
            sheet: kind.sheet,
            address: "A1",
            message: `The workbook has no table for "${kind.title}"; build the lineup onto it again, or map the block that holds these records.`,
          }));
      const ids = keyIds(kind);
      // Without a key column rows cannot be told apart; the missing column is said by its own rule.
      if (tables.some(({ at }) => ids.some((id) => !at.has(id)))) return [];
      const present = new Set(tables.flatMap(({ keys }) => keys));
      return [...first.given]
        .filter(([key]) => !present.has(key))
        .map(([key, row]) => ({
          rule: "missing-row",
          weight: "stop",
          record: kind.id,
          panel: String(row.object),
          sheet: first.table.sheet,
          address: a1(first.table.top, first.table.left),
          row: key,
          message: first.table.seen
            ? `${key}: the lineup needs this record and no line of the mapped blocks is it; put it there, or map the block that holds it.`
            : `${key}: the lineup needs this row and the table lacks it; build the lineup onto the workbook again.`,
        }));
    }),
};
