import type { CellValue } from "../../records/kind";
import { boxAt, type Sheet, type StandInBook } from "../book";
import { gridFormula } from "./gridFormula";
import { type GridStyle, gridSizes, gridStyles } from "./gridLook";

interface GridCell {
  v?: CellValue;
  f?: string;
  t?: 1 | 2;
  s?: object;
}

/** A sheet of the stand-in's workbook in the form in which the grid takes it. */
export const sheetData = (book: StandInBook, sheet: Sheet) => {
  const { columns, rows } = gridSizes(sheet);
  const height = Math.max(sheet.cells.length, 1);
  const width = Math.max(1, ...sheet.cells.map((row) => row?.length ?? 0));
  return {
    id: sheet.id,
    name: sheet.name,
    rowCount: Math.max(height + 20, 60),
    columnCount: Math.max(width + 4, 20),
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

function cellData(book: StandInBook, sheet: Sheet, height: number, width: number) {
  const styles = gridStyles(sheet);
  const lines: Record<number, Record<number, GridCell>> = {};
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const cell = gridCell(book, sheet, row, column, styles.get(row)?.get(column));
      if (!cell) continue;
      const line = lines[row] ?? {};
      line[column] = cell;
      lines[row] = line;
    }
  return lines;
}

function gridCell(
  book: StandInBook,
  sheet: Sheet,
  row: number,
  column: number,
  style: GridStyle | undefined,
): GridCell | undefined {
  const box = boxAt(sheet, row, column);
  if (!box && !style) return undefined;
  const drawn = style ? { s: style } : {};
  if (!box) return drawn;
  if (box.formula !== undefined)
    return { f: gridFormula(book, sheet, row, box.formula), v: box.value, ...drawn };
  return { v: box.value, ...(typeof box.value === "string" ? { t: 1 as const } : {}), ...drawn };
}
