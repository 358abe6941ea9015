import { writeXlsx } from "hucre/xlsx";
import { KINDS } from "../../src/records/kinds";
import { cellFormula, tableReference } from "../../src/sheets/formula";
import type { Plan } from "../../src/sheets/plan";
import { letters, publishedRows } from "./publishedSheet";
import { substitute } from "./substitute";

/**
 * A workbook with the record tables of a plan, every formula as the program stores it save that our
 * worksheet functions are native expressions, and no cached results: whoever opens it must compute.
 */
export function judgeBook(plan: Plan): Promise<Uint8Array> {
  const sheets = KINDS.map((kind) => {
    const rows = plan.sheets.find(({ table }) => table === kind.table)?.rows ?? [];
    const ref = tableReference(kind.table, kind.columns);
    const cells = new Map<string, { type: "formula"; formula: string; value: null }>();
    const values = rows.map((row, at) => {
      // Steps stand to the right of the table, a column left free.
      let next = kind.columns.length + 1;
      const put = (step: string): string => {
        cells.set(`${at + 1},${next}`, { type: "formula", formula: step, value: null });
        return `${letters(next++)}${at + 2}`;
      };
      return kind.columns.map((column, position) => {
        const formula = cellFormula(column, row, ref, plan.lineup);
        if (formula !== undefined)
          cells.set(`${at + 1},${position}`, {
            type: "formula",
            formula: substitute(formula, put),
            value: null,
          });
        const own = column.own?.(row, plan.lineup);
        return own ? own.value : (row[column.id] ?? null);
      });
    });
    return {
      name: kind.sheet,
      rows: [kind.columns.map(({ header }) => header), ...values],
      cells,
      tables: [
        {
          name: kind.table,
          range: `A1:${letters(kind.columns.length - 1)}${rows.length + 1}`,
          columns: kind.columns.map(({ header }) => ({ name: header })),
        },
      ],
    };
  });
  return writeXlsx({ sheets: [...sheets, { name: "Published", rows: publishedRows() }] });
}
