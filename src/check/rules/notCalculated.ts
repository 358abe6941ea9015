import { type Rule, where } from "../context";

/** A table whose formulas stand without their values: what was stored cannot be compared with what is computed. */
export const notCalculated: Rule = {
  id: "not-calculated",
  find: ({ tables }) =>
    tables
      .filter(({ calculated }) => !calculated)
      .map((table) => ({
        rule: "not-calculated",
        weight: "query",
        ...where(table, 0, "result"),
        panel: "",
        message: `The formulas of "${table.table.name}" stand without stored values: the program that saved this workbook did not calculate. Open it in a spreadsheet with the add-in and save it, so that stored results can be compared.`,
      })),
};
