import { straddles } from "../../records/guard";
import { type Comparison, isBlank, type Row, verdictOf } from "../../records/kind";
import { applies, compared, isAsked, wordColumns } from "../../records/verdict";
import {
  blanks,
  headerOf,
  inUnit,
  type JudgedTable,
  type Rule,
  rowName,
  said,
  where,
} from "../context";
import { misread } from "../misread";

/** A reading that proves nothing either way, though its conditions are recorded. */
export const inconclusive: Rule = {
  id: "inconclusive",
  title: "A reading that proves nothing",
  finds:
    "a row that has its readings and conditions and still cannot be judged: a bound that does not reach the limit, too low a test voltage, too short a test, no limit",
  why: "It looks tested and is not.",
  satisfies: "a test that reaches the limit, or the limit that is missing",
  quiet: "where a condition is not recorded, or an entry cannot be read: other rules report that",
  reads: "row",
  rows: (table, context) => {
    const { columns, accepted, enough } = table.kind;
    const conditions = columns.filter(({ need }) => need === "condition");
    const words = wordColumns(columns);
    const entries = columns.filter(({ role, unit }) => role === "entry" && unit);
    const reading = columns.find(({ need }) => need === "reading");
    return (row, stored, judged) => {
      if (verdictOf(judged) !== "Inconclusive") return undefined;
      if (blanks(conditions, stored, context.lineup)) return undefined;
      if (entries.some(({ id, unit }) => misread(stored[id], unit) !== undefined)) return undefined;
      const unproved = [...enough, ...accepted].filter(
        (comparison) => applies(comparison, judged) && compared(comparison, judged) !== "Pass",
      );
      const unanswered = words
        .filter(
          (word) =>
            isAsked(word, judged) &&
            !word.wrong(judged[word.id]) &&
            !word.answered(judged[word.id]),
        )
        .map(({ header, computed }) =>
          computed
            ? `"${header}" cannot be worked out`
            : `"${header}" is not answered by a word of its list`,
        );
      const limits = accepted.filter(({ when }) => when).map(({ limit }) => headerOf(table, limit));
      const unlimited =
        accepted.length > 0 && !accepted.some((one) => applies(one, judged))
          ? [
              `there is no ${[...new Set(limits)].map((limit) => `"${limit}"`).join(" or ")} to judge by`,
            ]
          : [];
      const doubtful = accepted
        .filter((one) => applies(one, judged) && compared(one, judged) === "Pass")
        .filter((one) => straddles(one, judged, context.lineup))
        .map(
          ({ value, limit }) =>
            `"${headerOf(table, value)}" meets "${headerOf(table, limit)}" by less than the uncertainty of its instrument, and the cover asks for guarded acceptance`,
        );
      const reasons = [
        ...doubtful,
        ...unproved.map((one) => why(table, judged, one)),
        ...unanswered,
        ...unlimited,
      ];
      const main = unproved.find((one) => accepted.includes(one)) ?? accepted[0] ?? unproved[0];
      return {
        rule: "inconclusive",
        weight: "query",
        ...where(table, row, main?.value ?? reading?.id ?? "result"),
        message: `${rowName(table, row)}: cannot be judged${reasons.length > 0 ? `: ${reasons.join("; ")}` : ""}.`,
        found: said(main && judged[main.value]),
        expected: said(main && judged[main.limit]),
      };
    };
  },
};

/** Why a comparison does not decide, in words. */
const why = (table: JudgedTable, judged: Row, { value, limit, unit }: Comparison): string => {
  if (isBlank(judged[limit])) return `there is no "${headerOf(table, limit)}" to judge by`;
  return isBlank(judged[value])
    ? `"${headerOf(table, value)}" cannot be worked out`
    : judged[value] === "not corrected"
      ? "the reading, or a condition that it is corrected by, lies outside what the correction holds for"
      : `"${headerOf(table, value)}" is ${inUnit(judged[value], unit)} against "${headerOf(table, limit)}" of ${inUnit(judged[limit], unit)}`;
};
