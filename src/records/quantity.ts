import type { Bound } from "../quantities/reading";
import { readReading } from "../quantities/readReading";
import type { Unit } from "../quantities/units";
import { type CellValue, isBlank } from "./kind";

/** A number with its bound, as a cell of a unit's column holds it; undefined where the cell cannot be read. */
export interface Quantity {
  readonly value: number;
  readonly bound: Bound;
}

/** Reads an entry cell: a number is in the column's unit, text is read as written on site. */
export function quantity(cell: CellValue | undefined, unit: Unit): Quantity | undefined {
  if (typeof cell === "number") return { value: cell, bound: "exact" };
  if (typeof cell !== "string" || isBlank(cell)) return undefined;
  const read = readReading(cell, { unit });
  return read.ok ? read.value : undefined;
}

/** A number that is known exactly; undefined for bounds and for what cannot be read. */
export function exactly(cell: CellValue | undefined, unit: Unit): number | undefined {
  const read = quantity(cell, unit);
  return read?.bound === "exact" ? read.value : undefined;
}

/** A quantity as a cell: a number when exact, else text such as `> 3160000`, so that a bound never looks like a number. */
export const quantityCell = ({ value, bound }: Quantity): CellValue =>
  bound === "exact" ? value : `${bound === "above" ? ">" : "<"} ${value}`;
