import { cellsOf } from "../../records/cellsOf";
import type { Column } from "../../records/kind";
import { exactly } from "../../records/quantity";
import type { JudgedTable } from "../context";

/** Shows every reading of a column that is a number. */
export function eachReading(
  { rows, aside }: JudgedTable,
  { id, unit }: Column,
  look: (row: number, value: number) => void,
): void {
  const cells = cellsOf(rows, id);
  for (let row = 0; row < cells.length; row++) {
    const cell = cells[row];
    const value = unit ? exactly(cell, unit) : typeof cell === "number" ? cell : undefined;
    if (value !== undefined && !aside.has(row)) look(row, value);
  }
}
