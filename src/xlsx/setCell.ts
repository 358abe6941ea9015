import type { Cell, CellStyle } from "hucre/xlsx";
import type { CellValue } from "../records/kind";

/** Puts a value, or a formula with the value it computes to, into a sheet of the file library. */
export function setCell(
  sheet: {
    rows?: (string | number | boolean | Date | null)[][];
    cells?: Map<string, Partial<Cell>>;
  },
  row: number,
  column: number,
  value: CellValue,
  formula: string | undefined,
  style: CellStyle | undefined,
) {
  const rows = sheet.rows ?? [];
  while (rows.length <= row) rows.push([]);
  const cells = rows[row] as CellValue[];
  while (cells.length <= column) cells.push(null);
  cells[column] = value;
  const typed = (
    value === null
      ? formula === undefined
        ? { value: null, type: "empty" }
        : { value: "", type: "formula", formula, formulaResult: "" }
      : formula === undefined
        ? { value, type: typeof value }
        : { value, type: "formula", formula, formulaResult: value }
  ) as Partial<Cell>;
  sheet.cells?.set(`${row},${column}`, style ? { ...typed, style } : typed);
}
