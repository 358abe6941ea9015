import { isBlank, verdictOf } from "../../records/kind";
import { exempting } from "../../records/verdict";
import { type Rule, rowName, where } from "../context";

/** A check that is said not to apply, without a word why. */
export const exemptUnexplained: Rule = {
  id: "exempt-unexplained",
  title: "Does not apply, without a reason",
  finds: "a check that is marked as not applicable, with no word why",
  why: "A word takes a check out of the record as easily as it takes out work not done.",
  satisfies: "a reason in the remarks",
  quiet: "where the remarks say anything",
  reads: "row",
  rows: (table) => (row, stored, judged) => {
    if (verdictOf(judged) !== "Not required" || !isBlank(stored.remarks)) return undefined;
    const [word] = exempting(table.kind.columns, judged);
    return word
      ? {
          rule: "exempt-unexplained",
          weight: "query",
          ...where(table, row, "remarks"),
          message: `${rowName(table, row)}: "${word.header}" is ${word.exempt}; say in the remarks why it does not apply.`,
        }
      : undefined;
  },
};
