import { isBlank } from "../../records/kind";
import { amongRows } from "../amongRows";
import { type JudgedTable, overColumns, type Rule, rowName, where } from "../context";
import { isSameResult } from "../isSameResult";

/** A computed cell that somebody typed over with the very value it had: it no longer follows its row. */
export const typedOver: Rule = {
  id: "typed-over",
  reads: "row",
  among: (table) =>
    amongRows(
      table,
      computedIn(table),
      (stored, judged, row, { id }) =>
        stored !== null &&
        table.table.formula(row, table.at.get(id) ?? 0) === undefined &&
        isSameResult(stored, judged),
    ),
  rows: (table, { text }) => {
    const computed = computedIn(table);
    return (row, stored, judged) =>
      overColumns(computed, ({ id, header }) =>
        isBlank(stored[id]) ||
        table.table.formula(row, table.at.get(id) ?? 0) !== undefined ||
        !isSameResult(stored[id], judged[id])
          ? undefined
          : {
              rule: "typed-over",
              weight: "query",
              ...where(table, row, id),
              message: text.rules["typed-over"].message(rowName(table, row), header),
            },
      );
  },
};

const computedIn = ({ kind, at }: JudgedTable) =>
  kind.columns.filter(
    ({ id, role, formula }) => formula && (role === "computed" || role === "result") && at.has(id),
  );
