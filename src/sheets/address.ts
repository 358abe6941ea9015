import type { TableSnapshot } from "./snapshot";

/** Letters of a sheet column, from 0: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  const before = Math.floor(column / 26) - 1;
  return (before >= 0 ? columnLetters(before) : "") + String.fromCharCode(65 + (column % 26));
}

/** A1 address of a sheet cell, rows and columns from 0. */
export const a1 = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;

/** A1 address of a cell of a table's body. */
export function cellAddress(table: TableSnapshot, row: number, column: number): string {
  const place = table.ownLayout ? table.ownLayout.place(row, column) : undefined;
  return place
    ? a1(place.row, place.column)
    : table.ownLayout
      ? a1(table.top, table.left)
      : a1(table.top + 1 + row, table.left + column);
}
