import type { CellValue } from "../../records/kind";
import { boxAt, type Sheet, type StandInBook } from "../book";
import { gridFormula } from "./gridFormula";
import { type GridStyle, gridSizes, gridStyles } from "./gridLook";

/** A cell in the form in which the grid takes it: value, formula, type (1 text, 3 truth), style. */
export interface GridCell {
  v?: CellValue;
  f?: string;
  t?: 1 | 3;
  s?: GridStyle;
}

/** Cells by row and column. */
export type GridLines<C = GridCell> = Record<number, Record<number, C>>;

export type SheetData = ReturnType<typeof sheetData>;

/** Blank rows and columns that the grid shows beyond what a sheet holds. */
export const SPARE = { rows: 20, columns: 4 };

/** A sheet of the stand-in's workbook in the form in which the grid takes it. */
export const sheetData = (book: StandInBook, sheet: Sheet) => {
  const { columns, rows } = gridSizes(sheet);
  const height = Math.max(sheet.cells.length, 1);
  const width = Math.max(1, ...sheet.cells.map((row) => row?.length ?? 0));
  return {
    id: sheet.id,
    name: sheet.name,
    rowCount: Math.max(height + SPARE.rows, 60),
    columnCount: Math.max(width + SPARE.columns, 20),
    cellData: cellData(book, sheet, height, width),
    columnData: columns,
    rowData: rows,
    defaultColumnWidth: 88,
    mergeData: sheet.merges.map(({ top, left, bottom, right }) => ({
      startRow: top,
      startColumn: left,
      endRow: bottom,
      endColumn: right,
    })),
    ...(sheet.frozen ? { freeze: freeze(sheet.frozen) } : {}),
  };
};

const freeze = ({ bottom, right }: { bottom: number; right: number }) => ({
  startRow: bottom + 1,
  startColumn: right + 1,
  ySplit: bottom + 1,
  xSplit: right + 1,
});

function cellData(book: StandInBook, sheet: Sheet, height: number, width: number): GridLines {
  const styles = gridStyles(sheet);
  const lines: GridLines = {};
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const cell = gridCell(book, sheet, row, column, styles.get(row)?.get(column));
      if (cell) putCell(lines, row, column, cell);
    }
  return lines;
}

/** Puts a cell into lines of them. */
export function putCell<C>(lines: GridLines<C>, row: number, column: number, cell: C): void {
  const line = lines[row] ?? {};
  line[column] = cell;
  lines[row] = line;
}

/** A cell of the stand-in's workbook in the form in which the grid takes it; undefined where nothing is to be shown. */
export function gridCell(
  book: StandInBook,
  sheet: Sheet,
  row: number,
  column: number,
  style: GridStyle | undefined,
): GridCell | undefined {
  const box = boxAt(sheet, row, column);
  if (!box && !style) return undefined;
  return {
    ...(box ? { v: box.value, ...typed(box.value) } : {}),
    ...(box?.formula === undefined ? {} : { f: gridFormula(book, sheet, row, box.formula) }),
    ...(style ? { s: style } : {}),
  };
}

const typed = (value: CellValue): Pick<GridCell, "t"> => {
  if (typeof value === "string") return { t: 1 };
  return typeof value === "boolean" ? { t: 3 } : {};
};
