import type { Lineup } from "../../lineup/lineup";
import { evaluate } from "../../records/evaluate";
import type { CellValue, Row } from "../../records/kind";
import type { CellWrite } from "../cells/cell";
import { isSameStored } from "../cells/cell";
import type { RecordTable } from "../recordTable";

/** A value for one cell of a record table, by column id. */
export interface Fill {
  readonly row: number;
  readonly column: string;
  readonly value: CellValue;
}

/** The rows of a table with the fills in them. */
export function filled(rows: readonly Row[], fills: readonly Fill[]): Row[] {
  const after: Record<string, CellValue>[] = rows.map((row) => row);
  const fresh = new Set<number>();
  for (const { row, column, value } of fills) {
    if (!fresh.has(row)) {
      after[row] = { ...after[row] };
      fresh.add(row);
    }
    (after[row] as Record<string, CellValue>)[column] = value;
  }
  return after;
}

/**
 * Every cell to write so that a table holds the fills: the fills themselves, and the new results of the
 * formulas that depend on them. A computed cell that somebody typed over is left alone.
 */
export function refill(table: RecordTable, fills: readonly Fill[], lineup: Lineup): CellWrite[] {
  const rows = filled(table.rows, fills);
  const judged = evaluate(table.kind, rows, lineup);
  const entries = fills.flatMap(({ row, column, value }): CellWrite[] => {
    const at = table.at.get(column);
    return at === undefined ? [] : [{ row, column: at, value }];
  });
  const results = table.kind.columns.flatMap(({ id }): CellWrite[] => {
    const at = table.at.get(id);
    if (at === undefined) return [];
    return judged.flatMap((after, row): CellWrite[] => {
      const formula = table.table.formula(row, at);
      const value = after[id] ?? null;
      return formula === undefined || isSameStored(table.rows[row]?.[id] ?? null, value)
        ? []
        : [{ row, column: at, value, formula }];
    });
  });
  return [...entries, ...results];
}
