import { rowsByFormula } from "../../sheets/cells/formulaRuns";
import { inRowOrder } from "../among/amongRows";
import { type JudgedTable, overColumns, type Rule, rowName, where } from "../context";
import { canonical } from "../formulas/canonical";

/** Functions that come to something else at each calculation. */
const CHANGING: ReadonlySet<string> = new Set(["RAND", "RANDBETWEEN", "RANDARRAY", "NOW", "TODAY"]);

/** An entry that is worked out in place of being read, or that is another one each time. */
export const readingFormula: Rule = {
  id: "reading-formula",
  reads: "row",
  among: (table) =>
    inRowOrder(
      entriesIn(table).flatMap(({ id }) => rowsByFormula(table.table, table.at.get(id) ?? 0, true)),
    ),
  rows: (table, { text }) => {
    const entries = entriesIn(table);
    return (row) =>
      overColumns(entries, ({ id, header, need }) => {
        const formula = table.table.formula(row, table.at.get(id) ?? 0);
        if (formula === undefined) return undefined;
        const { refs, functions } = canonical(formula, table.table, row);
        const changes = functions.some((name) => CHANGING.has(name));
        return changes || (need === "reading" && refs.length > 0)
          ? {
              rule: "reading-formula",
              weight: "query",
              ...where(table, row, id),
              message: text.rules["reading-formula"][changes ? "changing" : "message"](
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

const entriesIn = ({ kind, at }: JudgedTable) =>
  kind.columns.filter(({ id, role }) => role === "entry" && at.has(id));
