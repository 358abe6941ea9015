import type { CellValue } from "../../records/kind";
import { isStored, overColumns, type Rule, rowName, shown, where } from "../context";
import { isErrorValue } from "../errorValue";
import { isSameResult } from "../isSameResult";

/** A stored result, or a stored intermediate value, that differs from the one computed from the row's entries. */
export const resultDisagrees: Rule = {
  id: "result-disagrees",
  title: "A stored value that differs",
  finds:
    "a stored result or computed value that differs from the one computed from the row’s own entries",
  why: "Somebody typed over it, or its formula is not ours, or it was not calculated after a change: what the sheet says is not what the readings say.",
  satisfies: "the formula put back and the sheet calculated",
  quiet:
    "for formulas of a table that was not calculated at all, and for errors: other rules report both",
  reads: "row",
  rows: (table) => {
    const computed = table.kind.columns.filter(
      ({ role, id }) => (role === "computed" || role === "result") && table.at.has(id),
    );
    return (row, stored, judged) =>
      overColumns(computed, ({ id, header }) =>
        isSameResult(stored[id], judged[id]) ||
        isErrorValue(stored[id]) ||
        !isStored(table, row, id)
          ? undefined
          : {
              rule: "result-disagrees",
              weight: "stop",
              ...where(table, row, id),
              message: `${rowName(table, row)}: "${header}" shows ${apart(stored[id], judged[id])}; calculated from the row's entries it is ${apart(judged[id], stored[id])}.`,
              found: apart(stored[id], judged[id]),
              expected: apart(judged[id], stored[id]),
            },
      );
  },
};

/** A cell as it is said beside another: in full where the short form is the same for both. */
const apart = (cell: CellValue | undefined, other: CellValue | undefined) =>
  shown(cell) === shown(other) ? String(cell) : shown(cell);
