import { isBlank, type Row } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { amongRows } from "../among/amongRows";
import { overColumns, overRows, type Rule, rowName, where } from "../context";

const PLAIN = /^['\s]*[+-]?\d[\d\s.,']*$/;

/** A number that stands as text where a spreadsheet calculates with numbers. */
export const numberAsText: Rule = {
  id: "number-as-text",
  reads: "table",
  find: (table, context) => {
    const text = context.text.rules["number-as-text"];
    const numeric = table.kind.columns.filter(
      ({ id, role, accepts }) =>
        role === "entry" &&
        table.at.has(id) &&
        (accepts?.type === "number" || accepts?.type === "reading"),
    );
    const isText = (stored: Row, id: string) => {
      const cell = stored[id];
      return typeof cell === "string" && !isBlank(cell) && PLAIN.test(cell);
    };
    /** In somebody's own layout, a number under a title that names no unit. */
    const isBare = (row: number, id: string) =>
      typeof table.table.ownLayout?.holds(row, table.at.get(id) ?? -1)?.value === "number";
    const bare = new Map(
      numeric.map(({ id }) => [
        id,
        table.table.ownLayout
          ? table.rows.findIndex(
              (stored, row) => isText(stored, id) && isBare(row, id) && !table.aside.has(row),
            )
          : -1,
      ]),
    );
    return overRows(
      table,
      (row, stored) =>
        overColumns(numeric, ({ id, header, unit }) => {
          if (!isText(stored, id)) return undefined;
          const cell = String(stored[id]);
          if (isBare(row, id))
            return row === bare.get(id)
              ? {
                  rule: "number-as-text",
                  weight: "query",
                  ...where(table, row, id),
                  message: text.noUnit(rowName(table, row), header, cell, unit ?? ""),
                  found: cell,
                }
              : undefined;
          return {
            rule: "number-as-text",
            // What reads as one number is judged by it: nothing to answer.
            weight: unit && exactly(cell, unit) !== undefined ? "note" : "query",
            ...where(table, row, id),
            message: text.message(rowName(table, row), header, cell.trim()),
            found: cell,
          };
        }),
      amongRows(table, numeric, (stored) => typeof stored === "string"),
    ).map(({ finding }) => finding);
  },
};
