import type { Bounded } from "../quantities/reading/bounded";
import { readReading } from "../quantities/reading/readReading";
import { readUnit } from "../quantities/reading/readUnit";
import type { Unit } from "../quantities/units";
import { type CellValue, isBlank } from "./kind";

/** Reads an entry cell: a number is in the column's unit, text is read as written on site. */
export function quantity(cell: CellValue | undefined, unit: Unit): Bounded | undefined {
  if (typeof cell === "number") return { value: cell, bound: "exact" };
  if (typeof cell !== "string" || isBlank(cell)) return undefined;
  const read = readReading(cell, { unit });
  return read.ok ? read.value : undefined;
}

/** A number that is known exactly; undefined for bounds and for what cannot be read. */
export function exactly(cell: CellValue | undefined, unit: Unit): number | undefined {
  if (typeof cell === "number") return cell;
  const read = quantity(cell, unit);
  return read?.bound === "exact" ? read.value : undefined;
}

/** The same in the unit that another cell names; undefined too where that is no unit. */
export function exactlyIn(
  cell: CellValue | undefined,
  unit: CellValue | undefined,
): number | undefined {
  if (typeof cell === "number") return cell;
  const named = readUnit(String(unit ?? ""));
  return named.ok ? exactly(cell, named.value) : undefined;
}
