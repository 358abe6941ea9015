import { verdictOf } from "../../records/kind";
import { overRows, type Rule, rowName, where } from "../context";

/** A row without its reading. */
export const missingReading: Rule = {
  id: "missing-reading",
  find: (context) =>
    overRows(context, (table) => {
      const column = table.kind.columns.find(({ need }) => need === "reading");
      return (row, _stored, judged) =>
        verdictOf(judged) === "Missing"
          ? {
              rule: "missing-reading",
              weight: "stop",
              ...where(table, row, column?.id ?? "reading"),
              message: `${rowName(table, row)}: no reading in "${column?.header}".`,
            }
          : undefined;
    }),
};
