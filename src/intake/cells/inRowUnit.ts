import { readUnit } from "../../quantities/reading/readUnit";
import type { Column, Row } from "../../records/kind";

/**
 * A column whose unit its row names, with that unit; any other as it is.
 *
 * @example inRowUnit(protectionReading, { inUnit: "A" }).unit // "A"
 */
export const inRowUnit = (column: Column, row: Row): Column => {
  const unit = column.unitIn === undefined ? undefined : readUnit(String(row[column.unitIn] ?? ""));
  return unit?.ok ? { ...column, unit: unit.value } : column;
};
