import type { CellValue, Column, Row } from "../records/kind";
import { isStored, type JudgedTable, overColumns, type RowRule } from "./context";
import { isErrorValue } from "./errorValue";
import type { Finding } from "./finding";
import { isSameResult } from "./isSameResult";

/** Looks for cells of some columns, limits or givens, that hold something else than the criterion or the lineup gives. */
export function differences(
  table: JudgedTable,
  isAsked: (column: Column) => boolean,
  finding: (
    row: number,
    column: Column,
    stored: CellValue,
    wanted: CellValue,
    judged: Row,
  ) => Finding,
): RowRule {
  const ours = table.kind.columns.filter((column) => isAsked(column) && table.at.has(column.id));
  return (row, stored, judged) => {
    const planned = table.given.get(table.keys[row] ?? "") ?? stored;
    return overColumns(ours, (column) => {
      const { id, value, formula } = column;
      if (formula && !isStored(table, row, id)) return undefined;
      const held = stored[id] ?? null;
      const wanted = (value ? judged : planned)[id] ?? null;
      return isSameResult(held, wanted) || isErrorValue(held)
        ? undefined
        : finding(row, column, held, wanted, judged);
    });
  };
}
