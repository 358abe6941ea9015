import type { CellValue } from "../../records/kind";
import type { SheetCells, TableSnapshot } from "../../sheets/snapshot";
import type { Block, TableBlock } from "../write/outlineBlocks";
import { asCell, asFormula } from "./cellValues";
import type { Beside } from "./readBeside";
import { storedFormula } from "./storedFormula";

/** The cells of a sheet, also those before and after what is used of it. */
export function sheetCells(block: Block, beside: Beside = {}): SheetCells {
  const { first, left, rowCount, columnCount, values, formulas } = block;
  const value = (row: number, column: number) => values[row - first]?.[column - left];
  const { merges, note } = beside;
  const cells: SheetCells = {
    rowCount: first + rowCount,
    columnCount: left + columnCount,
    cell: (row, column) => asCell(value(row, column)),
    formula: (row, column) => {
      const text = asFormula(formulas[row - first]?.[column - left], value(row, column));
      return text === undefined ? undefined : storedFormula(text, "");
    },
    merges,
    note,
  };
  blockBehind.set(cells, block);
  return cells;
}

/**
 * A table of which only the values have been read: its columns are taken to hold the formulas of its first
 * row throughout, as a build leaves them.
 */
export function withFormulasOfFirst(block: TableBlock): TableBlock {
  const { values, formulas } = block.sample;
  const first = formulas.map((text, column) => asFormula(text, values[column]) ?? "");
  return { ...block, formulas: block.values.map(() => first) };
}

/** What a table or the cells of a sheet were made of. */
export const blockBehind = new WeakMap<TableSnapshot | SheetCells, Block>();

export function tableSnapshot(block: TableBlock): TableSnapshot {
  const { name, sheet, first, left, headers, rowCount, values, formulas } = block;
  const { hidden, hiddenColumns } = block;
  const stored = new Map<string, string>();
  const snapshot: TableSnapshot = {
    name,
    sheet,
    top: first - 1,
    left,
    headers,
    rowCount,
    ...(hidden.size > 0 ? { hidden } : {}),
    ...(hiddenColumns.size > 0 ? { hiddenColumns } : {}),
    cell: (row, column): CellValue => asCell(values[row]?.[column]),
    formula: (row, column) => {
      const text = asFormula(formulas[row]?.[column], values[row]?.[column]);
      if (text === undefined) return undefined;
      const known = stored.get(text) ?? storedFormula(text, name);
      stored.set(text, known);
      return known;
    },
  };
  blockBehind.set(snapshot, block);
  return snapshot;
}
