import type { CellValue } from "../../records/kind";
import type { SheetCells } from "../../sheets/snapshot";
import type { TextRow } from "../text/delimited";

/** A part of a sheet, rows and columns from 0, both ends included. */
export interface Region {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

export const wholeOf = ({ rowCount, columnCount }: SheetCells): Region => ({
  top: 0,
  bottom: rowCount - 1,
  left: 0,
  right: columnCount - 1,
});

/**
 * A cell as text. A number that is none of a day is written without a decimal mark, as 525e-1, so that
 * it reads the same beside text with a decimal comma.
 */
const asText = (value: CellValue): string => {
  if (value === null) return "";
  const [, whole, fraction] =
    typeof value === "number" ? (/^(-?\d+)\.(\d+)$/.exec(String(value)) ?? []) : [];
  return fraction === undefined || /^\d{5}$/.test(whole ?? "")
    ? String(value).trim()
    : `${`${whole}${fraction}`.replace(/^(-?)0+(?=\d)/, "$1")}e-${fraction.length}`;
};

/** By row, then column: the row of the cell that it is joined to, which holds what is written there. */
export const joinedTo = ({ merges = [] }: SheetCells): ReadonlyMap<number, Map<number, number>> => {
  const rows = new Map<number, Map<number, number>>();
  for (const { top, bottom, left } of merges)
    for (let row = top + 1; row <= bottom; row++)
      rows.set(row, (rows.get(row) ?? new Map<number, number>()).set(left, top));
  return rows;
};

/** The rows of a part of a sheet as text, numbered as the sheet numbers them. */
export function* sheetRows(cells: SheetCells, region: Region): Generator<TextRow> {
  const joins = joinedTo(cells);
  for (let row = region.top; row <= Math.min(region.bottom, cells.rowCount - 1); row++) {
    const texts: string[] = [];
    for (let column = region.left; column <= region.right; column++) {
      texts.push(asText(cells.cell(row, column)));
    }
    const joined = new Map<number, string>();
    for (const [column, top] of joins.get(row) ?? [])
      if (column >= region.left && column <= region.right)
        joined.set(column - region.left, asText(cells.cell(top, column)));
    yield { line: row + 1, cells: texts, ...(joined.size > 0 && { joined }) };
  }
}

/** The blocks of columns of a sheet that blank columns part. */
export const columnBlocks = (cells: SheetCells): Region[] => {
  const whole = wholeOf(cells);
  const blocks: Region[] = [];
  let left = -1;
  for (let column = 0; column <= cells.columnCount; column++) {
    const filled = column < cells.columnCount && hasAny(cells, column);
    if (filled && left < 0) left = column;
    if (!filled && left >= 0) {
      blocks.push({ ...whole, left, right: column - 1 });
      left = -1;
    }
  }
  return blocks;
};

const hasAny = (cells: SheetCells, column: number): boolean => {
  for (let row = 0; row < cells.rowCount; row++) {
    const value = cells.cell(row, column);
    if (value !== null && value !== "") return true;
  }
  return false;
};
