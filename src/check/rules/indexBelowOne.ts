import { verdictOf } from "../../records/kind";
import { overColumns, type Rule, rowName, said, where } from "../context";

const INDICES: ReadonlySet<string> = new Set(["polarization", "absorption"]);

/** An insulation resistance that falls while the voltage is held. */
export const indexBelowOne: Rule = {
  id: "index-below-one",
  title: "Insulation that falls with time",
  finds: "a polarization index or absorption ratio below 1",
  why: "Resistance rises while a steady voltage is held. Where it falls, the insulation heats up or leaks over a wet or dirty surface, or the readings were exchanged.",
  satisfies:
    "the readings put in their right places, or the surface cleaned and dried and the test repeated",
  quiet: "where the index is not meaningful, and where the row fails by it already",
  reads: "row",
  rows: (table) => {
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
                  message: `${rowName(table, row)}: "${header}" is ${said(index)}: the resistance fell while the voltage was held. Were the readings exchanged, or does the insulation leak?`,
                  found: said(index),
                  expected: "at least 1",
                }
              : undefined;
          });
  },
};
