import { overColumns, overRows, type Rule, rowName, said, where } from "../context";

/** An entry outside what its column can hold: a slip of the pen, of the unit, or of the decimal mark. */
export const implausible: Rule = {
  id: "implausible",
  find: (context) =>
    overRows(context, (table) => {
      const bounded = table.kind.columns.filter(
        ({ role, accepts }) => role === "entry" && accepts?.type === "number",
      );
      return (row, stored) =>
        overColumns(bounded, ({ id, header, accepts, unit }) => {
          const cell = stored[id];
          if (typeof cell !== "number" || accepts?.type !== "number") return undefined;
          const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = accepts;
          return cell >= least && cell <= most
            ? undefined
            : {
                rule: "implausible",
                weight: "query",
                ...where(table, row, id),
                message: `${rowName(table, row)}: "${header}" is ${said(cell)} ${unit ?? ""}; from ${least} to ${most} is to be expected.`,
                found: said(cell),
                expected: `${least} to ${most}`,
              };
        });
    }),
};
