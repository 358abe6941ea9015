import { dewLimit } from "../../standards/practice";
import { amongRows, columnsNamed } from "../among/amongRows";
import { type Rule, rowName, said, where } from "../context";

const PRACTICE = dewLimit.value;

/** A test on a surface at or below the dew point, or close to it. */
export const dewPoint: Rule = {
  id: "dew-point",
  reads: "row",
  among: (table) =>
    amongRows(
      table,
      columnsNamed(table, "dewMargin"),
      (_stored, margin) => typeof margin === "number" && margin < PRACTICE,
    ),
  rows: (table, context) => (row, stored, judged) => {
    const margin = judged.dewMargin;
    if (typeof margin !== "number" || margin >= PRACTICE) return undefined;
    const wet = margin <= 0;
    const text = context.text.rules["dew-point"];
    return {
      rule: "dew-point",
      weight: wet ? "stop" : "note",
      ...where(table, row, "surface"),
      message: wet
        ? text.wet(rowName(table, row), said(stored.surface))
        : text.near(rowName(table, row), said(margin), PRACTICE),
      found: said(margin),
      expected: wet ? text.expectedWet : text.expected(PRACTICE),
    };
  },
};
