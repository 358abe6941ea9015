import { type Rule, rowName, said, shown, where } from "../context";
import { differences } from "../differences";

/** A limit on the sheet that is not the one its criterion gives. */
export const limitDiffers: Rule = {
  id: "limit-differs",
  title: "A limit that is not its criterion's",
  finds:
    "a limit on the sheet that differs from the one that the maker, the project or the standard gives",
  why: "A limit moved a little makes a defect pass, and nobody looks at limits twice.",
  satisfies:
    "the criterion's limit; a limit of the project's own belongs in the lineup, with its document",
  quiet:
    "for formulas that were never calculated, and where the lineup leaves the limit to be typed",
  reads: "row",
  rows: (table) =>
    differences(table, "limit", (row, { id, header }, stored, wanted, judged) => ({
      rule: "limit-differs",
      weight: "stop",
      ...where(table, row, id),
      message: `${rowName(table, row)}: "${header}" is ${shown(stored)}; its criterion gives ${shown(wanted)}.`,
      found: said(stored),
      expected: said(wanted),
      source: String(judged.sources ?? ""),
    })),
};
