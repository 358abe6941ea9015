import { dayOf, overColumns, type Rule, rowName, said, where } from "../context";

/** An entry outside what its column can hold: a slip of the pen, of the unit, or of the decimal mark. */
export const implausible: Rule = {
  id: "implausible",
  title: "An impossible entry",
  finds: "a number outside what its column can hold",
  why: "It is a slip of the pen, of the unit or of the decimal mark, and the row is judged by it.",
  satisfies: "the number as the instrument showed it, in the unit of the header",
  quiet: "for text: another rule reports that",
  reads: "row",
  rows: (table) => {
    const bounded = table.kind.columns.filter(
      ({ role, accepts }) =>
        role === "entry" && (accepts?.type === "number" || accepts?.type === "date"),
    );
    return (row, stored) =>
      overColumns(bounded, ({ id, header, accepts, unit }) => {
        const cell = stored[id];
        if (typeof cell !== "number") return undefined;
        if (accepts?.type === "date" && dayOf(cell) === undefined)
          return {
            rule: "implausible",
            weight: "query",
            ...where(table, row, id),
            message: `${rowName(table, row)}: "${header}" is ${said(cell)}, which is not a date; type it as 2026-11-25.`,
            found: said(cell),
          };
        if (accepts?.type !== "number") return undefined;
        const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = accepts;
        return cell >= least && cell <= most
          ? undefined
          : {
              rule: "implausible",
              weight: "query",
              ...where(table, row, id),
              message: `${rowName(table, row)}: "${header}" is ${said(cell)} ${unit ?? ""}; expected ${least} to ${most}.`,
              found: said(cell),
              expected: `${least} to ${most}`,
            };
      });
  },
};
