import { cellsOf } from "../../records/cellsOf";
import { sourceText } from "../../standards/criterion";
import { withstandTolerance } from "../../standards/withstandTolerance";
import { amongRows, columnsNamed } from "../among/amongRows";
import { type Rule, rowName, said, where, withRole } from "../context";

/** A withstand test above the required voltage by more than the tolerance: it strained the insulation more than was agreed. */
export const overVoltage: Rule = {
  id: "over-voltage",
  reads: "row",
  of: withRole("withstand"),
  among: (table) => {
    const required = cellsOf(table.judged, "required");
    return amongRows(table, columnsNamed(table, "applied"), (applied, _judged, row) => {
      const least = required[row];
      return typeof applied === "number" && typeof least === "number" && applied > least;
    });
  },
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
            message: context.text.rules["over-voltage"].message(
              rowName(table, row),
              said(stored.applied),
              said(judged.required),
              tolerance.value * 100,
            ),
            found: said(stored.applied),
            expected: said(judged.required),
            source: sourceText(tolerance.source),
          }
        : undefined;
  },
};
