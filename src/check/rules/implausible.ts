import { dayOf, inUnit, overColumns, type Rule, rowName, said, where } from "../context";

/** An entry outside what its column can hold: a slip of the pen, of the unit, or of the decimal mark. */
export const implausible: Rule = {
  id: "implausible",
  reads: "row",
  rows: (table, context) => {
    const text = context.text.rules.implausible;
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
            message: text.noDate(rowName(table, row), header, said(cell)),
            found: said(cell),
          };
        if (accepts?.type !== "number") return undefined;
        const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = accepts;
        const expected = text.range(least, most);
        return cell >= least && cell <= most
          ? undefined
          : {
              rule: "implausible",
              weight: "query",
              ...where(table, row, id),
              message: text.message(rowName(table, row), header, inUnit(cell, unit), expected),
              found: said(cell),
              expected,
            };
      });
  },
};
