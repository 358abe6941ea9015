import { isBlank, type Row, verdictOf } from "../../records/kind";
import { applies, compared, isAsked, wordColumns } from "../../records/verdict";
import { headerOf, inUnit, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../finding";

/** A limit that is not met, a test that broke down, or a word that says that something is not right. */
export const outOfLimits: Rule = {
  id: "out-of-limits",
  title: "Out of limits",
  finds:
    "every limit that is not met, a test that broke down, every word that says that something is not right",
  why: "It is what the test was made to find.",
  satisfies: "the defect repaired and the test repeated; or a concession with its reason",
  quiet:
    "where it cannot be judged: that is said by another rule; a row that lacks another reading is told of all the same",
  reads: "row",
  rows: (table) => {
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
            message: `${rowName(table, row)}: ${
              id === "discharge"
                ? "a disruptive discharge occurred; find and repair it, then repeat the test."
                : `"${header}" is ${judged[id]}; it is to be ${sound.join(" or ")}.`
            }`,
            found: String(judged[id]),
            expected: right,
          })),
        // One finding for a value: of several limits that it misses, the first tells most.
        ...table.kind.accepted
          .filter(
            (comparison) => applies(comparison, judged) && compared(comparison, judged) === "Fail",
          )
          .filter(({ value }) => !told.has(value) && told.add(value))
          .map(({ value, limit, unit }) => ({
            ...finding(value),
            message: `${rowName(table, row)}: "${headerOf(table, value)}" is ${inUnit(judged[value], unit)}; "${headerOf(table, limit)}" is ${inUnit(judged[limit], unit)}.`,
            found: said(judged[value]),
            expected: said(judged[limit]),
            source: String(judged.sources ?? ""),
          })),
      ];
    };
  },
};
