import { overColumns, type Rule, rowName, where } from "../context";
import { canonical } from "../formulas/canonical";

/** A reading that is worked out from other cells in place of being read. */
export const readingFormula: Rule = {
  id: "reading-formula",
  title: "A reading by formula",
  finds: "a reading that a formula takes from other cells",
  why: "A reading is what an instrument showed. One that follows from another row's was not measured.",
  satisfies: "the reading as it was taken; a conversion within the cell, such as =5.2*1000, is one",
  quiet: "for formulas that take nothing from other cells",
  reads: "row",
  rows: (table) => {
    const readings = table.kind.columns.filter(
      ({ id, need, role }) => need === "reading" && role === "entry" && table.at.has(id),
    );
    return (row) =>
      overColumns(readings, ({ id, header }) => {
        const formula = table.table.formula(row, table.at.get(id) ?? 0);
        return formula !== undefined && canonical(formula, table.table, row).refs.length > 0
          ? {
              rule: "reading-formula",
              weight: "query",
              ...where(table, row, id),
              message: `${rowName(table, row)}: "${header}" is calculated by =${formula.slice(0, 80)}; a reading is what the instrument showed.`,
              found: `=${formula}`.slice(0, 200),
            }
          : undefined;
      });
  },
};
