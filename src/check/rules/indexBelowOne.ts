import { verdictOf } from "../../records/kind";
import { overColumns, type Rule, rowName, said, where } from "../context";

const INDICES: ReadonlySet<string> = new Set(["polarization", "absorption"]);

/** An insulation resistance that falls while the voltage is held. */
export const indexBelowOne: Rule = {
  id: "index-below-one",
  reads: "row",
  rows: (table, context) => {
    const text = context.text.rules["index-below-one"];
    const indices = table.kind.columns.filter(
      ({ id, role }) => role === "computed" && INDICES.has(id),
    );
    return (row, _stored, judged) =>
      verdictOf(judged) === "Fail"
        ? undefined
        : overColumns(indices, ({ id, header }) => {
            const index = judged[id];
            return typeof index === "number" && index < 1
              ? {
                  rule: "index-below-one",
                  weight: "query",
                  ...where(table, row, id),
                  message: text.message(rowName(table, row), header, said(index)),
                  found: said(index),
                  expected: text.expected,
                }
              : undefined;
          });
  },
};
