import { amongRows } from "../among/amongRows";
import { type JudgedTable, overColumns, type Rule, rowName, where } from "../context";
import { isErrorValue } from "../errorValue";

const kept = ({ kind, at }: JudgedTable) => kind.columns.filter(({ id }) => at.has(id));

/** An error value in a cell of a record. */
export const errorValue: Rule = {
  id: "error-value",
  reads: "row",
  among: (table) => amongRows(table, kept(table), isErrorValue),
  rows: (table, { text }) => {
    const columns = kept(table);
    return (row, stored) =>
      overColumns(columns, ({ id, header }) =>
        isErrorValue(stored[id])
          ? {
              rule: "error-value",
              weight: "stop",
              ...where(table, row, id),
              message: text.rules["error-value"].message(
                rowName(table, row),
                header,
                String(stored[id]),
              ),
              found: String(stored[id]),
            }
          : undefined,
      );
  },
};
