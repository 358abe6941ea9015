import { overColumns, type Rule, rowName, where } from "../context";
import { isErrorValue } from "../errorValue";

/** An error value in a cell of a record. */
export const errorValue: Rule = {
  id: "error-value",
  title: "An error value",
  finds: "an error such as #REF! or #N/A in a cell of a record",
  why: "Whatever is calculated from it is an error too, or is silently left out of a total.",
  satisfies: "the formula or value corrected; #NAME? goes away where the add-in is loaded",
  quiet: "for text that only begins with #",
  reads: "row",
  rows: (table) => {
    const columns = table.kind.columns.filter(({ id }) => table.at.has(id));
    return (row, stored) =>
      overColumns(columns, ({ id, header }) =>
        isErrorValue(stored[id])
          ? {
              rule: "error-value",
              weight: "stop",
              ...where(table, row, id),
              message: `${rowName(table, row)}: "${header}" holds the error ${stored[id]}; correct the cells it is calculated from.`,
              found: String(stored[id]),
            }
          : undefined,
      );
  },
};
