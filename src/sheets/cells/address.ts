import { toCol } from "@borgar/fx/xlsx";
import type { TableSnapshot } from "../snapshot";

/** A1 address of a sheet cell, rows and columns from 0. */
export const a1 = (row: number, column: number): string => `${toCol(column)}${row + 1}`;

/** A1 address of a cell of a table's body. */
export function cellAddress(table: TableSnapshot, row: number, column: number): string {
  const place = table.ownLayout ? table.ownLayout.place(row, column) : undefined;
  return place
    ? a1(place.row, place.column)
    : table.ownLayout
      ? a1(table.top, table.left)
      : a1(table.top + 1 + row, table.left + column);
}
