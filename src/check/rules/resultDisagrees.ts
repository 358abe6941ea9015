import { type CellValue, isBlank } from "../../records/kind";
import { overColumns, overRows, type Rule, rowName, said, where } from "../context";

/** A stored result, or a stored intermediate value, that differs from the one computed from the row's entries. */
export const resultDisagrees: Rule = {
  id: "result-disagrees",
  find: (context) =>
    overRows(context, (table) => {
      if (!table.calculated) return () => undefined;
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
                message: `${rowName(table, row)}: "${header}" says ${apart(stored[id], judged[id])}; from the row's own entries it is ${apart(judged[id], stored[id])}.`,
                found: apart(stored[id], judged[id]),
                expected: apart(judged[id], stored[id]),
              },
        );
    }),
};

const shown = (cell: CellValue | undefined) => (isBlank(cell) ? "blank" : said(cell));

/** A cell as it is said beside another: in full where the short form is the same for both. */
const apart = (cell: CellValue | undefined, other: CellValue | undefined) =>
  shown(cell) === shown(other) ? String(cell) : shown(cell);

/** Equal to nine digits, as text, or both blank. */
export const agrees = (one: CellValue | undefined, other: CellValue | undefined): boolean =>
  one === other ||
  (typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other))
    : isBlank(one) && isBlank(other));
