import { type Comparison, isBlank, type Row, verdictOf } from "../../records/kind";
import { compared } from "../../records/verdict";
import {
  blanks,
  headerOf,
  type JudgedTable,
  overRows,
  type Rule,
  rowName,
  said,
  where,
} from "../context";

/** A reading that proves nothing either way, though its conditions are recorded. */
export const inconclusive: Rule = {
  id: "inconclusive",
  find: (context) =>
    overRows(context, (table) => {
      const { columns, accepted, enough } = table.kind;
      const conditions = columns.filter(({ need }) => need === "condition");
      const reading = columns.find(({ need }) => need === "reading");
      return (row, stored, judged) => {
        if (verdictOf(judged) !== "Inconclusive") return undefined;
        if (blanks(conditions, stored, context.lineup)) return undefined;
        const unproved = [...enough, ...accepted].filter(
          (comparison) => compared(comparison, judged) !== "Pass",
        );
        const main = unproved.find((one) => accepted.includes(one)) ?? accepted[0] ?? unproved[0];
        return {
          rule: "inconclusive",
          weight: "query",
          ...where(table, row, main?.value ?? reading?.id ?? "result"),
          message: `${rowName(table, row)}: cannot be judged${unproved.length > 0 ? `: ${unproved.map((one) => why(table, judged, one)).join("; ")}` : ""}.`,
          found: said(main && judged[main.value]),
          expected: said(main && judged[main.limit]),
        };
      };
    }),
};

/** Why a comparison does not decide, in words. */
const why = (table: JudgedTable, judged: Row, { value, limit, unit }: Comparison): string => {
  if (isBlank(judged[limit])) return `there is no "${headerOf(table, limit)}" to judge by`;
  return isBlank(judged[value])
    ? `"${headerOf(table, value)}" cannot be worked out`
    : `"${headerOf(table, value)}" is ${said(judged[value])} ${unit} against "${headerOf(table, limit)}" of ${said(judged[limit])} ${unit}`;
};
