import { sourceText } from "../../standards/criterion";
import { withstandTolerance } from "../../standards/withstandTolerance";
import { type Rule, rowName, said, where } from "../context";

/** A withstand test above the required voltage by more than the tolerance: it strained the insulation more than was agreed. */
export const overVoltage: Rule = {
  id: "over-voltage",
  title: "Tested too high",
  finds: "a withstand test above the required voltage by more than the tolerance",
  why: "It strained the insulation more than was agreed.",
  satisfies: "the maker's word that the insulation bears it, or a corrected record",
  quiet: "within the tolerance",
  reads: "row",
  kind: "withstand",
  rows: (table, context) => {
    const tolerance = withstandTolerance(context.lineup.withstand.seconds);
    return (row, stored, judged) =>
      typeof stored.applied === "number" &&
      typeof judged.required === "number" &&
      stored.applied > judged.required * (1 + tolerance.value)
        ? {
            rule: "over-voltage",
            weight: "query",
            ...where(table, row, "applied"),
            message: `${rowName(table, row)}: ${said(stored.applied)} kV was applied; required is ${said(judged.required)} kV ± ${tolerance.value * 100} %.`,
            found: said(stored.applied),
            expected: said(judged.required),
            source: sourceText(tolerance.source),
          }
        : undefined;
  },
};
