import type { CellValue, RecordKind } from "../../records/kind";
import { quantity } from "../../records/quantity";

/** Whether two cells of a record column are the same reading, in whatever unit each is written. */
export const isSameReading = (
  one: CellValue,
  other: CellValue,
  { columns }: RecordKind,
  id: string,
): boolean => {
  if (one === other) return true;
  const unit = columns.find((column) => column.id === id)?.unit;
  if (unit === undefined) return String(one ?? "").trim() === String(other ?? "").trim();
  const [left, right] = [quantity(one, unit), quantity(other, unit)];
  return (
    left !== undefined &&
    right !== undefined &&
    left.value === right.value &&
    left.bound === right.bound
  );
};
