import { fromCol, toCol, tokenize } from "@borgar/fx/xlsx";
import { type CellGrid, placeIn } from "./grid";
import type { StoredFormulas } from "./scanSheet";

export type FormulaAt = (row: number, column: number) => string | undefined;

/**
 * The formula of each cell of a sheet as if it were written out there. A file writes a formula that is
 * filled down once, at its first cell, and an array formula once for all cells that it fills.
 */
export function formulasOf(cells: CellGrid, { texts, shared, arrays }: StoredFormulas): FormulaAt {
  const fills = new Map(
    [...shared].map(([number, { formula, row, column }]) => [number, filled(formula, row, column)]),
  );
  const ofArray = (row: number, column: number) =>
    arrays.find(
      ({ top, left, bottom, right }) =>
        row >= top && row <= bottom && column >= left && column <= right,
    )?.formula;
  return (row, column) => {
    const at = placeIn(cells, row, column);
    const number = at < 0 ? 0 : (cells.formulas[at] ?? 0);
    if (number === 0) return arrays.length > 0 ? ofArray(row, column) : undefined;
    const text = texts[number] ?? "";
    return typeof text === "number" ? fills.get(text)?.(row, column) : text;
  };
}

const REFERENCES: ReadonlySet<string> = new Set(["range", "range_beam"]);
const PART = /(\$?)([A-Za-z]+)|(\$?)(\d+)/g;

/** Writes a formula out for other cells than its own: what no dollar sign holds moves with the cell. */
export function filled(formula: string, row: number, column: number): FormulaAt {
  const tokens = tokenize(formula, { withLocation: false, mergeRefs: true });
  return (toRow, toColumn) =>
    tokens
      .map(({ type, value }) =>
        REFERENCES.has(type) ? moved(value, toRow - row, toColumn - column) : value,
      )
      .join("");
}

/** A reference so many rows and columns on. */
function moved(reference: string, down: number, across: number): string {
  const sheetEnd = reference.lastIndexOf("!") + 1;
  const cells = reference
    .slice(sheetEnd)
    .replace(PART, (text, columnHeld, letters, rowHeld, digits) => {
      if (columnHeld || rowHeld) return text;
      return letters ? toCol(fromCol(letters) + across) : String(Number(digits) + down);
    });
  return reference.slice(0, sheetEnd) + cells;
}
