import { cellsOf } from "../../records/cellsOf";
import { isBlank } from "../../records/kind";
import { rowsByFormula } from "../../sheets/cells/formulaRuns";
import { inRowOrder } from "../among/amongRows";
import { isSameResult } from "../compare/isSameResult";
import { type JudgedTable, overColumns, type Rule, rowName, where } from "../context";

/** A computed cell that somebody typed over with the very value it had: it no longer follows its row. */
export const typedOver: Rule = {
  id: "typed-over",
  reads: "row",
  among: (table) =>
    inRowOrder(
      computedIn(table).flatMap(({ id }) => {
        const [stored, judged] = [cellsOf(table.rows, id), cellsOf(table.judged, id)];
        return rowsByFormula(table.table, table.at.get(id) ?? 0, false).filter(
          (row) => !isBlank(stored[row]) && isSameResult(stored[row], judged[row]),
        );
      }),
    ),
  rows: (table, { text }) => {
    const computed = computedIn(table);
    return (row, stored, judged) =>
      overColumns(computed, ({ id, header }) =>
        isBlank(stored[id]) ||
        table.table.formula(row, table.at.get(id) ?? 0) !== undefined ||
        !isSameResult(stored[id], judged[id])
          ? undefined
          : {
              rule: "typed-over",
              weight: "query",
              ...where(table, row, id),
              message: text.rules["typed-over"].message(rowName(table, row), header),
            },
      );
  },
};

const computedIn = ({ kind, at }: JudgedTable) =>
  kind.columns.filter(
    ({ id, role, formula }) => formula && (role === "computed" || role === "result") && at.has(id),
  );
