import { fromCol, toCol, tokenize } from "@borgar/fx/xlsx";
import type { Cell, Sheet } from "hucre/xlsx";
import { type Area, cellCount, readArea } from "../sheets/area";
import { type CellGrid, cellIn, gridOf } from "./grid";

type FormulaAt = (row: number, column: number) => string | undefined;

/** The formulas of a sheet as a file writes them. */
export interface StoredFormulas {
  /** By row and column the formula's text, or the number of the shared formula. */
  readonly written: CellGrid;
  /** Formulas that are filled over several cells, each written once, for the cell where it stands. */
  readonly shared: ReadonlyMap<
    number,
    { readonly formula: string; readonly row: number; readonly column: number }
  >;
  /** Formulas that fill several cells as one. */
  readonly arrays: readonly (Area & { readonly formula: string })[];
}

/** What is kept of a sheet's formulas as the file library read them. */
export function storedFormulas({ cells }: Sheet): StoredFormulas {
  const written: (string | number)[][] = [];
  const shared = new Map<number, { formula: string; row: number; column: number }>();
  const arrays: (Area & { formula: string })[] = [];
  /** Keeps what a formula fills beside its own cell. */
  const noteFill = (formula: string, cell: Partial<Cell>, row: number, column: number) => {
    if (isSharedSource(cell)) shared.set(cell.formulaSharedIndex ?? 0, { formula, row, column });
    const area = cell.formulaType === "array" ? filledArea(cell.formulaRef) : undefined;
    if (area) arrays.push({ ...area, formula });
  };
  for (const [key, cell] of cells ?? []) {
    if (cell.formula === undefined) continue;
    const comma = key.indexOf(",");
    const [row, column] = [Number(key.slice(0, comma)), Number(key.slice(comma + 1))];
    written[row] ??= [];
    written[row][column] = cell.formula === "" ? (cell.formulaSharedIndex ?? "") : cell.formula;
    if (cell.formula !== "") noteFill(cell.formula, cell, row, column);
  }
  return { written: gridOf(written, (formula) => formula ?? null), shared, arrays };
}

/** Whether a cell holds the text of a formula that is filled over others. */
const isSharedSource = ({ formulaType, formulaSharedIndex }: Partial<Cell>): boolean =>
  formulaType === "shared" && formulaSharedIndex !== undefined;

/** The cells that an array formula fills, where they are several. */
const filledArea = (reference: string | undefined): Area | undefined => {
  const area = reference ? readArea(reference) : undefined;
  return area && cellCount(area) > 1 ? area : undefined;
};

/**
 * The formula of each cell of a sheet as if it were written out there. A file writes a formula that is
 * filled down once, at its first cell, and an array formula once for all cells that it fills; the file
 * library leaves the other cells without a text.
 */
export function formulasOf({ written, shared, arrays }: StoredFormulas): FormulaAt {
  const own = cellIn(written);
  const fills = new Map(
    [...shared].map(([number, { formula, row, column }]) => [number, filled(formula, row, column)]),
  );
  const ofArray = (row: number, column: number) =>
    arrays.find(
      ({ top, left, bottom, right }) =>
        row >= top && row <= bottom && column >= left && column <= right,
    )?.formula;
  return (row, column) => {
    const here = own(row, column);
    return typeof here === "number"
      ? fills.get(here)?.(row, column)
      : typeof here === "string"
        ? here
        : arrays.length > 0
          ? ofArray(row, column)
          : undefined;
  };
}

const REFERENCES: ReadonlySet<string> = new Set(["range", "range_beam"]);
const PART = /(\$?)([A-Za-z]+)|(\$?)(\d+)/g;

/** Writes a formula out for other cells than its own: what no dollar sign holds moves with the cell. */
function filled(formula: string, row: number, column: number): FormulaAt {
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
