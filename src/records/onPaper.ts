import type { CellValue } from "./kind";

/**
 * A number as one writes it down beside a calculation: at most six figures; text as it is.
 *
 * @example onPaper(3.14159265) // "3.14159"
 */
export const onPaper = (cell: CellValue | undefined): string =>
  typeof cell === "number" ? String(Number(cell.toPrecision(6))) : String(cell ?? "");

/** A sum on paper; blank where the outcome is no number. */
export const workedOut = (outcome: CellValue | undefined, sum: string, unit = ""): string =>
  typeof outcome === "number" ? `${sum} = ${onPaper(outcome)}${unit && ` ${unit}`}` : "";
