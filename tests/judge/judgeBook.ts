import { writeXlsx } from "hucre/xlsx";
import { evaluate } from "../../src/records/evaluate";
import type { RecordKind } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import { formulaIn, tableReference } from "../../src/sheets/cells/formula";
import type { Plan } from "../../src/sheets/plan/plan";
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
    const written = evaluate(kind, rows, plan.lineup);
    const values = rows.map((row, at) => {
      // Steps stand to the right of the table, a column left free.
      let next = kind.columns.length + 1;
      const put = (step: string): string => {
        cells.set(`${at + 1},${next}`, { type: "formula", formula: step, value: null });
        return `${letters(next++)}${at + 2}`;
      };
      return kind.columns.map((column, position) => {
        const formula = formulaIn(column, ref, plan.lineup)(row);
        if (formula !== undefined)
          cells.set(`${at + 1},${position}`, {
            type: "formula",
            formula: substitute(inCells(formula, kind, at + 2), put),
            value: null,
          });
        return formula === undefined
          ? (written[at]?.[column.id] ?? null)
          : (row[column.id] ?? null);
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

/** A reference to some cells of the row, side by side, as the native steps take it: by their addresses. */
const inCells = (formula: string, { columns }: RecordKind, row: number) =>
  formula.replace(/\w+\[\[#This Row\],\[([^\]]+)\]:\[([^\]]+)\]\]/g, (_text, from, to) =>
    [from, to]
      .map((name) => `${letters(columns.findIndex(({ header }) => header === name))}${row}`)
      .join(":"),
  );
