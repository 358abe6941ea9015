import { isBlank, verdictOf } from "../../records/kind";
import { exempting } from "../../records/verdict";
import { amongVerdicts } from "../among/amongRows";
import { type Rule, rowName, where } from "../context";

/** A check that is said not to apply, without a word why. */
export const exemptUnexplained: Rule = {
  id: "exempt-unexplained",
  reach: "panel",
  reads: "row",
  among: (table) => amongVerdicts(table, "Not required"),
  rows:
    (table, { text }) =>
    (row, stored, judged) => {
      if (verdictOf(judged) !== "Not required" || !isBlank(stored.remarks)) return undefined;
      const [word] = exempting(table.kind.columns, judged);
      return word
        ? {
            rule: "exempt-unexplained",
            weight: "query",
            ...where(table, row, "remarks"),
            message: text.rules["exempt-unexplained"].message(
              rowName(table, row),
              word.header,
              String(word.exempt),
            ),
          }
        : undefined;
    },
};
