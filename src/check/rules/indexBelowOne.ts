import { type CellValue, verdictOf } from "../../records/kind";
import { amongRows } from "../amongRows";
import { type JudgedTable, overColumns, type Rule, rowName, said, where } from "../context";

const INDICES: ReadonlySet<string> = new Set(["polarization", "absorption"]);

const indicesIn = ({ kind }: JudgedTable) =>
  kind.columns.filter(({ id, role }) => role === "computed" && INDICES.has(id));

const isBelowOne = (index: CellValue | undefined) => typeof index === "number" && index < 1;

/** An insulation resistance that falls while the voltage is held. */
export const indexBelowOne: Rule = {
  id: "index-below-one",
  reads: "row",
  among: (table) => amongRows(table, indicesIn(table), (_stored, index) => isBelowOne(index)),
  rows: (table, context) => {
    const text = context.text.rules["index-below-one"];
    const indices = indicesIn(table);
    return (row, _stored, judged) =>
      verdictOf(judged) === "Fail"
        ? undefined
        : overColumns(indices, ({ id, header }) => {
            const index = judged[id];
            return isBelowOne(index)
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
