import type { FindingsText } from "../../messages/messages";
import { NOT_CORRECTED } from "../../records/columns/common";
import { straddles } from "../../records/guard";
import { outsideRange } from "../../records/instruments";
import { type Comparison, isBlank, type Row, verdictOf } from "../../records/kind";
import { tooSmallIn } from "../../records/tooSmall";
import { applies, compared, isAsked, wordColumns } from "../../records/verdict";
import { amongVerdicts } from "../among/amongRows";
import {
  blanks,
  type Context,
  headerOf,
  type JudgedTable,
  type Rule,
  rowName,
  said,
  where,
  writtenIn,
} from "../context";
import { misread } from "../misread";

/** A reading that proves nothing either way, though its conditions are recorded. */
export const inconclusive: Rule = {
  id: "inconclusive",
  reads: "row",
  among: (table) => amongVerdicts(table, "Inconclusive"),
  rows: (table, context) => {
    const text = context.text.rules.inconclusive;
    const { columns, accepted, enough } = table.kind;
    const conditions = columns.filter(({ need }) => need === "condition");
    const entries = columns.filter(({ role, unit }) => role === "entry" && unit);
    const reading = columns.find(({ need }) => need === "reading");
    const unanswered = unansweredIn(table, text);
    return (row, stored, judged) => {
      if (verdictOf(judged) !== "Inconclusive") return undefined;
      if (blanks(conditions, stored, context.lineup)) return undefined;
      if (entries.some(({ id, unit }) => misread(stored[id], unit, context.text) !== undefined))
        return undefined;
      if (outsideRange(columns, stored, context.lineup).length > 0) return undefined;
      const unproved = [...enough, ...accepted].filter(
        (comparison) => applies(comparison, judged) && compared(comparison, judged) !== "Pass",
      );
      const reasons = [
        ...doubtful(table, judged, context),
        ...tooSmallIn(columns, judged).map(({ header, above }) =>
          text.tooSmall(header, String(above?.value ?? 0)),
        ),
        ...unproved.map((one) => why(table, judged, one, text)),
        ...unanswered(judged),
        ...unlimited(table, judged, text),
      ];
      // What its remark alone takes back, `remark-contradicts` tells.
      if (reasons.length === 0 && !isBlank(judged.remarks)) return undefined;
      const main = unproved.find((one) => accepted.includes(one)) ?? accepted[0] ?? unproved[0];
      return {
        rule: "inconclusive",
        weight: "query",
        ...where(table, row, main?.value ?? reading?.id ?? "result"),
        message: text.message(rowName(table, row), reasons),
        found: said(main && judged[main.value]),
        expected: said(main && judged[main.limit]),
      };
    };
  },
};

type Text = FindingsText["rules"]["inconclusive"];

/** Limits that are met, and by less than the uncertainty of the instrument where that counts. */
const doubtful = (table: JudgedTable, judged: Row, { lineup, text }: Context): string[] =>
  table.kind.accepted
    .filter((one) => applies(one, judged) && compared(one, judged) === "Pass")
    .filter((one) => straddles(one, table.kind.columns, judged, lineup))
    .map(({ value, limit }) =>
      text.rules.inconclusive.withinUncertainty(headerOf(table, value), headerOf(table, limit)),
    );

/** Words that are asked for and not answered, of each row. */
const unansweredIn = (table: JudgedTable, text: Text): ((judged: Row) => string[]) => {
  const words = wordColumns(table.kind.columns);
  return (judged) =>
    words
      .filter(
        (word) =>
          isAsked(word, judged) && !word.wrong(judged[word.id]) && !word.answered(judged[word.id]),
      )
      .map(({ id, header, computed, exempt }) => {
        if (computed) return text.notWorkedOut(header);
        const isExempting = exempt?.toLowerCase() === String(judged[id] ?? "").toLowerCase();
        return isExempting && exempt ? text.always(header, exempt) : text.notAnswered(header);
      });
};

/** Limits that are all left open, so that nothing is left to judge by. */
const unlimited = (table: JudgedTable, judged: Row, text: Text): string[] => {
  const { accepted } = table.kind;
  if (accepted.length === 0 || accepted.some((one) => applies(one, judged))) return [];
  const limits = accepted.filter(({ when }) => when).map(({ limit }) => headerOf(table, limit));
  return [text.noLimit([...new Set(limits)])];
};

/** Why a comparison does not decide, in words. */
const why = (
  table: JudgedTable,
  judged: Row,
  { value, limit, unit }: Comparison,
  text: Text,
): string => {
  const [header, limitHeader] = [headerOf(table, value), headerOf(table, limit)];
  if (isBlank(judged[limit])) return text.noLimit([limitHeader]);
  if (isBlank(judged[value])) return text.notWorkedOut(header);
  return judged[value] === NOT_CORRECTED
    ? text.notCorrected
    : text.against(
        header,
        writtenIn(table, judged, value, unit),
        limitHeader,
        writtenIn(table, judged, limit, unit),
      );
};
