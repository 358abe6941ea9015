import { isBlank, type Row } from "../../records/kind";
import { overColumns, overRows, type Rule, rowName, where } from "../context";

const PLAIN = /^['\s]*[+-]?\d[\d\s.,']*$/;

/** A number that stands as text where a spreadsheet calculates with numbers. */
export const numberAsText: Rule = {
  id: "number-as-text",
  title: "A number stored as text",
  finds:
    "an entry that shows a number and is text, so that formulas pass over it; in a user's own layout, a number whose unit nothing tells",
  why: "It looks measured, and every comparison, sum and plot leaves it out.",
  satisfies: "the number typed again into a cell that is not formatted as text",
  quiet:
    "for readings written with their unit or as a bound, such as 5.2 GΩ or > 2 TΩ: the add-in's functions read them",
  reads: "table",
  find: (table) => {
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
    return overRows(table, (row, stored) =>
      overColumns(numeric, ({ id, header, unit }) => {
        if (!isText(stored, id)) return undefined;
        const cell = String(stored[id]);
        if (isBare(row, id))
          return row === bare.get(id)
            ? {
                rule: "number-as-text",
                weight: "query",
                ...where(table, row, id),
                message: `${rowName(table, row)}, and every line of the block like it: "${header}" is ${cell} without a known unit, so nothing is judged by it; add the unit to the title, such as (${unit}).`,
                found: cell,
              }
            : undefined;
        return {
          rule: "number-as-text",
          weight: "query",
          ...where(table, row, id),
          message: `${rowName(table, row)}: "${header}" holds the text "${cell.trim()}", not a number; type it again as a number.`,
          found: cell,
        };
      }),
    ).map(({ finding }) => finding);
  },
};
