import { verdictOf } from "../../records/kind";
import { headerOf, inUnit, overRows, type Rule, rowName, said, where } from "../context";

/** A limit that is not met, or a test that broke down. */
export const outOfLimits: Rule = {
  id: "out-of-limits",
  find: (context) =>
    overRows(context, (table) => (row, _stored, judged) => {
      if (verdictOf(judged) !== "Fail") return undefined;
      const { value, limit, unit } = table.kind.plot;
      const at = { rule: "out-of-limits", weight: "stop" as const, ...where(table, row, value) };
      if (String(judged.discharge ?? "").toLowerCase() === "yes")
        return {
          ...at,
          ...where(table, row, "discharge"),
          message: `${rowName(table, row)}: a disruptive discharge occurred; find and repair it, then repeat the test.`,
          found: "Yes",
          expected: "No",
        };
      return {
        ...at,
        message: `${rowName(table, row)}: "${headerOf(table, value)}" is ${inUnit(judged[value], unit)}; "${headerOf(table, limit)}" is ${inUnit(judged[limit], unit)}.`,
        found: said(judged[value]),
        expected: said(judged[limit]),
        source: String(judged.sources ?? ""),
      };
    }),
};
