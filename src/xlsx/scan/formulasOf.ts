import { fromCol, toCol, tokenize } from "@borgar/fx/xlsx";
import { beyond, limitOf } from "../../sheets/plan/limits";
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
  const ofArray = arrayFinder(arrays);
  return (row, column) => {
    const at = placeIn(cells, row, column);
    const number = at < 0 ? 0 : (cells.formulas[at] ?? 0);
    if (number === 0) return arrays.length > 0 ? ofArray(row, column) : undefined;
    const text = texts[number] ?? "";
    return typeof text === "number" ? fills.get(text)?.(row, column) : text;
  };
}

/**
 * Finds the array formula that fills a cell. Those above it are gone through from the nearest on, as long as
 * any of them can reach so far down.
 */
function arrayFinder(arrays: StoredFormulas["arrays"]): FormulaAt {
  const sorted = [...arrays].sort((one, other) => one.top - other.top);
  const tops = Int32Array.from(sorted, ({ top }) => top);
  const bottoms = Int32Array.from(sorted, ({ bottom }) => bottom);
  const lefts = Int32Array.from(sorted, ({ left }) => left);
  const rights = Int32Array.from(sorted, ({ right }) => right);
  let lowest = 0;
  const reach = bottoms.map((bottom) => {
    lowest = Math.max(lowest, bottom);
    return lowest;
  });
  const most = limitOf("steps to its array formulas");
  let steps = 0;
  return (row, column) => {
    let at = lastFrom(tops, row);
    const from = at;
    const isThere = () =>
      row <= Number(bottoms[at]) && column >= Number(lefts[at]) && column <= Number(rights[at]);
    while (at >= 0 && Number(reach[at]) >= row && !isThere()) at -= 1;
    steps += from - at;
    if (steps > most) throw beyond("steps to its array formulas");
    return at >= 0 && isThere() ? sorted[at]?.formula : undefined;
  };
}

/** The last of areas, by their tops, that begins in a row or above it. */
function lastFrom(tops: Int32Array, row: number): number {
  let [from, to] = [0, tops.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (Number(tops[middle]) <= row) from = middle + 1;
    else to = middle;
  }
  return from - 1;
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
