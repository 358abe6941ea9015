import { quoted } from "../../quantities/quoted";
import { type Rule, whereTable } from "../context";

/** Tables named one by one; there are no more record kinds than this. */
const NAMED = 30;

/** Tables whose formulas stand without their values: what was stored cannot be compared with what is computed. */
export const notCalculated: Rule = {
  id: "not-calculated",
  title: "Formulas without values",
  finds:
    "tables whose formulas stand without their values, once for the workbook, at the first of them",
  why: "What was stored cannot be compared with what is computed here.",
  satisfies: "the workbook opened in a spreadsheet with the add-in and saved",
  quiet: "for a table in which at least one result has its value",
  reads: "book",
  of: "every kind",
  find: ({ tables }) => {
    const bare = tables.filter(({ calculated }) => !calculated);
    const [first] = bare;
    if (!first) return [];
    const names = bare.slice(0, NAMED).map(({ table }) => quoted(table.name));
    const more = bare.length - names.length;
    const { sheet, address } = whereTable(first);
    return [
      {
        rule: "not-calculated",
        weight: "query",
        sheet,
        address,
        message: `The formulas of ${names.join(", ")}${more > 0 ? ` and ${more} more tables` : ""} have no stored values: the program that saved this workbook did not calculate them. Open it in a spreadsheet with the add-in and save it, so that stored results can be compared.`,
      },
    ];
  },
};
