import { type CellValue, isBlank } from "../../records/kind";

/** Whether two computed values come to the same: to nine digits, as text, or both blank. */
export const isSameResult = (one: CellValue | undefined, other: CellValue | undefined): boolean =>
  one === other ||
  (typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other))
    : isBlank(one) && isBlank(other));
