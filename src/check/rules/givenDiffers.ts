import { type Rule, rowName, said, shown, where } from "../context";
import { differences } from "../differences";

/** A rating, fact or source of a row that is not the lineup's. */
export const givenDiffers: Rule = {
  id: "given-differs",
  title: "A rating that is not the lineup's",
  finds: "a rating, plate value or source on a record sheet that differs from the lineup's",
  why: "Limits follow from ratings: with another rating the row is judged by another limit.",
  satisfies: "the lineup's value; a change of the equipment belongs in the lineup",
  quiet: "for rows that the lineup does not need",
  reads: "row",
  rows: (table) =>
    differences(table, "given", (row, { id, header }, stored, wanted) => ({
      rule: "given-differs",
      weight: "stop",
      ...where(table, row, id),
      message: `${rowName(table, row)}: "${header}" is ${shown(stored)}; the lineup gives ${shown(wanted)}.`,
      found: said(stored),
      expected: said(wanted),
    })),
};
