import type { CellValue as LibraryValue, Workbook } from "hucre/xlsx";
import { toSerial } from "../quantities/dates";
import type { CellValue } from "../records/kind";

/** 1 January 1904 as a serial day of the 1900 system. */
const OF_1904 = 1462;
/** 1 January 1914: nothing is dated before it, so that an earlier "day" is a time or a number that only looks like a day. */
const NO_DAY = 3653;
/** Written by programs that keep days as text of their own type. */
const ISO_MOMENT = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?Z?$/;

/**
 * What a cell holds, as the file library read it: days as serial numbers of the 1900 system, also those of
 * a workbook that counts from 1904.
 */
export const plain = (
  value: LibraryValue | undefined,
  dateSystem?: Workbook["dateSystem"],
): CellValue =>
  value === undefined
    ? null
    : value instanceof Date
      ? dateSystem === "1904"
        ? from1904(toSerial(value) - OF_1904)
        : from1900(toSerial(value))
      : typeof value === "string" && value[10] === "T" && ISO_MOMENT.test(value)
        ? toSerial(new Date(value.endsWith("Z") ? value : `${value}Z`))
        : value;

/** Spreadsheets count a 29 February 1900 that never was: before it, their days are one less. */
const from1900 = (days: number) => (days < 61 ? days - 1 : days);

const from1904 = (days: number) => (days < NO_DAY ? days : days + OF_1904);

/** Days of a workbook that counts from 1904 as those of 1900, so that what is written into it agrees with them. */
export function countFrom1900(workbook: Workbook) {
  if (workbook.dateSystem !== "1904") return;
  for (const { rows, cells } of workbook.sheets) {
    for (const row of rows) inDaysOf1900(row, [...row.keys()]);
    for (const cell of cells?.values() ?? []) inDaysOf1900(cell, ["value", "formulaResult"]);
  }
  workbook.dateSystem = "1900";
}

/** Puts the serial day of the 1900 system in the place of each day of the 1904 system. */
function inDaysOf1900<K extends PropertyKey>(
  holder: { [key in K]?: LibraryValue },
  keys: readonly K[],
) {
  for (const key of keys) {
    const value = holder[key];
    if (value instanceof Date) holder[key] = plain(value, "1904");
  }
}
