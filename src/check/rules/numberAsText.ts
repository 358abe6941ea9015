import { isBlank } from "../../records/kind";
import { overColumns, type Rule, rowName, where } from "../context";

const PLAIN = /^['\s]*[+-]?\d[\d\s.,']*$/;

/** A number that stands as text where a spreadsheet calculates with numbers. */
export const numberAsText: Rule = {
  id: "number-as-text",
  title: "A number stored as text",
  finds: "an entry that shows a number and is text, so that formulas pass over it",
  why: "It looks measured, and every comparison, sum and plot leaves it out.",
  satisfies: "the number typed again into a cell that is not formatted as text",
  quiet:
    "for readings written with their unit or as a bound, such as 5.2 GΩ or > 2 TΩ: the add-in's functions read them",
  reads: "row",
  rows: (table) => {
    const numeric = table.kind.columns.filter(
      ({ id, role, accepts }) =>
        role === "entry" &&
        table.at.has(id) &&
        (accepts?.type === "number" || accepts?.type === "reading"),
    );
    return (row, stored) =>
      overColumns(numeric, ({ id, header }) => {
        const cell = stored[id];
        return typeof cell === "string" && !isBlank(cell) && PLAIN.test(cell)
          ? {
              rule: "number-as-text",
              weight: "query",
              ...where(table, row, id),
              message: `${rowName(table, row)}: "${header}" holds the text "${cell.trim()}", not a number; type it again as a number.`,
              found: cell,
            }
          : undefined;
      });
  },
};
