import { isBlank, type Row, verdictOf } from "../../records/kind";
import { applies, compared, isAsked, wordColumns } from "../../records/verdict";
import { amongVerdicts } from "../among/amongRows";
import { headerOf, type Rule, rowName, said, where, writtenIn } from "../context";
import type { Finding } from "../findings/finding";

/** A limit that is not met, a test that broke down, or a word that says that something is not right. */
export const outOfLimits: Rule = {
  id: "out-of-limits",
  reads: "row",
  among: (table) => amongVerdicts(table, "Fail", "Missing"),
  rows: (table, context) => {
    const text = context.text.rules["out-of-limits"];
    const words = wordColumns(table.kind.columns);
    /** Nothing that is told of the test speaks against what was measured. */
    const madeWell = (judged: Row) =>
      table.kind.enough.every(
        (one) =>
          isBlank(judged[one.value]) || !applies(one, judged) || compared(one, judged) === "Pass",
      );
    return (row, _stored, judged): Finding | Finding[] | undefined => {
      const verdict = verdictOf(judged);
      if (verdict !== "Fail" && !(verdict === "Missing" && madeWell(judged))) return undefined;
      const finding = (column: string) => ({
        rule: "out-of-limits",
        weight: "stop" as const,
        ...where(table, row, column),
      });
      const told = new Set<string>();
      return [
        ...words
          .filter((word) => isAsked(word, judged) && word.wrong(judged[word.id]))
          .map(({ id, header, sound, right }) => ({
            ...finding(id),
            message:
              id === "discharge"
                ? text.discharge(rowName(table, row))
                : text.word(rowName(table, row), header, String(judged[id]), sound),
            found: String(judged[id]),
            expected: right,
          })),
        // One finding for a value: of several limits that it misses, the first tells most.
        ...table.kind.accepted
          .filter(
            (comparison) => applies(comparison, judged) && compared(comparison, judged) === "Fail",
          )
          .filter(({ value }) => !told.has(value) && told.add(value))
          .map(({ value, limit, unit, sense }) => {
            const bounds = text.bounds[sense](writtenIn(table, judged, limit, unit));
            const reading = writtenIn(table, judged, value, unit);
            return {
              ...finding(value),
              message: text.limit(rowName(table, row), headerOf(table, value), reading, bounds),
              found: said(judged[value]),
              expected: bounds,
              source: String(judged.sources ?? ""),
            };
          }),
      ];
    };
  },
};
