import { isBlank, verdictOf } from "../../records/kind";
import { isLeftOut } from "../../records/rowsOf";
import { overRows, type Rule, rowName, where } from "../context";

/** A row without its reading. */
export const missingReading: Rule = {
  id: "missing-reading",
  find: (context) =>
    overRows(context, (table) => {
      if (isLeftOut(context.lineup, table.kind)) return () => undefined;
      const readings = table.kind.columns.filter(({ need }) => need === "reading");
      return (row, stored, judged) => {
        const column = readings.find(({ id }) => isBlank(stored[id])) ?? readings[0];
        return verdictOf(judged) === "Missing"
          ? {
              rule: "missing-reading",
              weight: "stop",
              ...where(table, row, column?.id ?? "reading"),
              message: `${rowName(table, row)}: no reading in "${column?.header}".`,
            }
          : undefined;
      };
    }),
};
