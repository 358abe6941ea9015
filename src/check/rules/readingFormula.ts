import { rowsByFormula } from "../../sheets/cells/formulaRuns";
import { inRowOrder } from "../among/amongRows";
import { type JudgedTable, overColumns, type Rule, rowName, where } from "../context";
import { canonical } from "../formulas/canonical";

/** A reading that is worked out from other cells in place of being read. */
export const readingFormula: Rule = {
  id: "reading-formula",
  reads: "row",
  among: (table) =>
    inRowOrder(
      readingsIn(table).flatMap(({ id }) =>
        rowsByFormula(table.table, table.at.get(id) ?? 0, true),
      ),
    ),
  rows: (table, { text }) => {
    const readings = readingsIn(table);
    return (row) =>
      overColumns(readings, ({ id, header }) => {
        const formula = table.table.formula(row, table.at.get(id) ?? 0);
        return formula !== undefined && canonical(formula, table.table, row).refs.length > 0
          ? {
              rule: "reading-formula",
              weight: "query",
              ...where(table, row, id),
              message: text.rules["reading-formula"].message(
                rowName(table, row),
                header,
                formula.slice(0, 80),
              ),
              found: `=${formula}`.slice(0, 200),
            }
          : undefined;
      });
  },
};

const readingsIn = ({ kind, at }: JudgedTable) =>
  kind.columns.filter(({ id, need, role }) => need === "reading" && role === "entry" && at.has(id));
