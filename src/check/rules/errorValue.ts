import { overColumns, type Rule, rowName, where } from "../context";
import { isErrorValue } from "../errorValue";

/** An error value in a cell of a record. */
export const errorValue: Rule = {
  id: "error-value",
  reads: "row",
  rows: (table, { text }) => {
    const columns = table.kind.columns.filter(({ id }) => table.at.has(id));
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
