import { isBlank, verdictOf } from "../../records/kind";
import { isLeftOut } from "../../records/rowsOf";
import { type Rule, rowName, where } from "../context";

/** A row without its reading. */
export const missingReading: Rule = {
  id: "missing-reading",
  title: "A reading missing",
  finds: "a row that the lineup needs without its reading",
  why: "The test was not made, or not written down.",
  satisfies: "the reading",
  quiet: "for record kinds that the project leaves out, and rows that do not apply",
  reads: "row",
  rows: (table, context) => {
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
  },
};
