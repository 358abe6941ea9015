import type { FindingsText } from "../messages/messages";
import { toldIn } from "../messages/told";
import { readReading } from "../quantities/reading/readReading";
import { type CellValue, type Column, isBlank } from "../records/kind";
import { dayOf } from "./context";
import { isErrorValue } from "./errorValue";

/**
 * Why text in the place of a number or a date cannot be read as one; undefined for what can, for blanks and
 * for error values, of which another rule tells.
 *
 * @param unit of the column; a date's where it has none
 * @example misread("about 5", "MΩ", text) // a sentence
 */
export const misread = (
  cell: CellValue | undefined,
  unit: Column["unit"],
  text: FindingsText,
): string | undefined => {
  if (typeof cell !== "string" || isBlank(cell) || isErrorValue(cell)) return undefined;
  if (unit) {
    const read = readReading(cell, { unit });
    return read.ok ? undefined : read.say(toldIn(text.language));
  }
  return dayOf(cell) === undefined ? text.rules.unreadable.noDate(cell.slice(0, 40)) : undefined;
};
