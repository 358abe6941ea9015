import { type Rule, rowName, said, shown, where } from "../context";
import { differences } from "../differences";

/** A rating, fact or source of a row that is not the lineup's. */
export const givenDiffers: Rule = {
  id: "given-differs",
  reads: "row",
  rows: (table, { text }) =>
    differences(table, "given", (row, { id, header }, stored, wanted) => ({
      rule: "given-differs",
      weight: "stop",
      ...where(table, row, id),
      message: text.rules["given-differs"].message(
        rowName(table, row),
        header,
        shown(stored, text),
        shown(wanted, text),
      ),
      found: said(stored),
      expected: said(wanted),
    })),
};
