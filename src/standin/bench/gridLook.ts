import type { Area } from "../../sheets/cells/area";
import { boxAt, type Format, type Sheet } from "../book";

/** How the grid draws a cell, in the words of its library. */
export interface GridStyle {
  bg?: { rgb: string };
  cl?: { rgb: string };
  bl?: 0 | 1;
  fs?: number;
  ff?: string;
  ht?: 1 | 2 | 3;
  vt?: 1 | 2 | 3;
  tb?: 3;
  n?: { pattern: string };
}

const HORIZONTAL: Record<string, 1 | 2 | 3> = { Left: 1, Center: 2, Right: 3 };
const VERTICAL: Record<string, 1 | 2 | 3> = { Top: 1, Center: 2, Bottom: 3 };

/** What each property of a look comes to in the grid. */
const DRAWN: Record<string, (value: unknown) => Partial<GridStyle>> = {
  "fill.color": (value) => ({ bg: { rgb: String(value) } }),
  "font.color": (value) => ({ cl: { rgb: String(value) } }),
  "font.bold": (value) => ({ bl: value ? 1 : 0 }),
  "font.size": (value) => ({ fs: Number(value) }),
  "font.name": (value) => ({ ff: String(value) }),
  horizontalAlignment: (value) => ({ ht: HORIZONTAL[String(value)] }),
  verticalAlignment: (value) => ({ vt: VERTICAL[String(value)] }),
  wrapText: (value) => (value ? { tb: 3 } : {}),
  numberFormat: (value) => (value === "General" ? {} : { n: { pattern: String(value) } }),
};

const MAX_ROWS = 5000;

/** The styles of a sheet's cells by row and column: looks in the order they were given, then conditional formats. */
export function gridStyles(sheet: Sheet): Map<number, Map<number, GridStyle>> {
  const styles = new Map<number, Map<number, GridStyle>>();
  const end = {
    row: Math.min(Math.max(sheet.cells.length, 40), MAX_ROWS),
    column: Math.max(1, ...sheet.cells.map((row) => row?.length ?? 0)),
  };
  const draw = (row: number, column: number, style: Partial<GridStyle>) => {
    const line = styles.get(row) ?? new Map<number, GridStyle>();
    line.set(column, { ...line.get(column), ...style });
    styles.set(row, line);
  };
  for (const { area, property, value } of sheet.looks) {
    const style = DRAWN[property]?.(value);
    if (style) overCells(area, end, (row, column) => draw(row, column, style));
  }
  // The first format has priority, so it is drawn last.
  for (const format of [...sheet.formats].reverse())
    for (const area of format.areas)
      overCells(area, end, (row, column) => {
        if (applies(format, sheet, row, column)) draw(row, column, look(format));
      });
  return styles;
}

/** Visits the cells of an area up to a last row and column. */
export function overCells(
  { top, left, bottom, right }: Area,
  end: { readonly row: number; readonly column: number },
  visit: (row: number, column: number) => void,
) {
  for (let row = top; row <= Math.min(bottom, end.row); row++)
    for (let column = left; column <= Math.min(right, end.column); column++) visit(row, column);
}

const look = ({ properties }: Format): Partial<GridStyle> => ({
  ...(properties["format.fill.color"]
    ? { bg: { rgb: String(properties["format.fill.color"]) } }
    : {}),
  ...(properties["format.font.color"]
    ? { cl: { rgb: String(properties["format.font.color"]) } }
    : {}),
});

/** Whether a conditional format holds at a cell: the two forms that the add-in writes. */
function applies(format: Format, sheet: Sheet, row: number, column: number): boolean {
  if (format.type === "Custom")
    return /^=LEN\("Gearproof mark: \w+"\)>0$/.test(String(format.properties["rule.formula"]));
  const rule = format.properties.rule as { formula1?: string; operator?: string } | undefined;
  if (format.type !== "CellValue" || rule?.operator !== "EqualTo") return false;
  return `="${boxAt(sheet, row, column)?.value ?? ""}"` === rule.formula1;
}

/** Column widths and row heights of a sheet in pixels. */
export function gridSizes(sheet: Sheet): {
  columns: Record<number, { w: number }>;
  rows: Record<number, { h: number }>;
} {
  const columns: Record<number, { w: number }> = {};
  const rows: Record<number, { h: number }> = {};
  for (const { area, property, value } of sheet.looks) {
    if (property === "columnWidth")
      for (let column = area.left; column <= Math.min(area.right, 200); column++)
        columns[column] = { w: Math.round((Number(value) * 4) / 3) };
    if (property === "rowHeight")
      for (let row = area.top; row <= Math.min(area.bottom, MAX_ROWS); row++)
        rows[row] = { h: Math.round((Number(value) * 4) / 3) };
  }
  return { columns, rows };
}
