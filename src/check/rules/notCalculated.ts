import { type Rule, whereTable } from "../context";

/** A table whose formulas stand without their values: what was stored cannot be compared with what is computed. */
export const notCalculated: Rule = {
  id: "not-calculated",
  title: "Formulas without values",
  finds: "a table whose formulas stand without their values",
  why: "What was stored cannot be compared with what is computed here.",
  satisfies: "the workbook opened in a spreadsheet with the add-in and saved",
  quiet: "where at least one result has its value",
  reads: "table",
  find: (table) =>
    table.calculated
      ? []
      : [
          {
            rule: "not-calculated",
            weight: "query",
            ...whereTable(table),
            message: `The formulas of "${table.table.name}" stand without stored values: the program that saved this workbook did not calculate. Open it in a spreadsheet with the add-in and save it, so that stored results can be compared.`,
          },
        ],
};
