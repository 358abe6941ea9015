import { type CellValue, isBlank } from "../../records/kind";
import { overColumns, overRows, type Rule, rowName, said, where } from "../context";

/** A stored result, or a stored intermediate value, that differs from the one computed from the row's entries. */
export const resultDisagrees: Rule = {
  id: "result-disagrees",
  find: (context) =>
    overRows(context, (table) => {
      const computed = table.kind.columns.filter(
        ({ role, id }) => (role === "computed" || role === "result") && table.at.has(id),
      );
      return (row, stored, judged) =>
        overColumns(computed, ({ id, header }) =>
          agrees(stored[id], judged[id])
            ? undefined
            : {
                rule: "result-disagrees",
                weight: "stop",
                ...where(table, row, id),
                message: `${rowName(table, row)}: "${header}" says ${shown(stored[id])}; from the row's own entries it is ${shown(judged[id])}.`,
                found: shown(stored[id]),
                expected: shown(judged[id]),
              },
        );
    }),
};

const shown = (cell: CellValue | undefined) => (isBlank(cell) ? "blank" : said(cell));

/** Equal to nine digits, as text, or both blank. */
export const agrees = (one: CellValue | undefined, other: CellValue | undefined): boolean =>
  one === other ||
  (typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other))
    : isBlank(one) && isBlank(other));
