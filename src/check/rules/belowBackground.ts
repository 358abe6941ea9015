import { cellsOf } from "../../records/cellsOf";
import type { CellValue } from "../../records/kind";
import { amongRows, columnsNamed } from "../among/amongRows";
import { overRows, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../findings/finding";

/** What background and level may differ by as they are read one after the other (common practice, no source). */
const DECIBELS = 2;

/** A level that lies below what was there before anything was under voltage. */
export const belowBackground: Rule = {
  id: "below-background",
  reads: "table",
  find: (table, { text }) => {
    if (!table.at.has("background")) return [];
    const says = text.rules["below-background"];
    const backgrounds = cellsOf(table.rows, "background");
    const units = cellsOf(table.rows, "inUnit");
    const among = amongRows(table, columnsNamed(table, "reading"), (level, _judged, row) =>
      isBelow(level, backgrounds[row], units[row]),
    );
    return overRows(
      table,
      (row, { reading, background, inUnit }): Finding => ({
        rule: "below-background",
        weight: "query",
        ...where(table, row, "reading"),
        message: says.message(
          rowName(table, row),
          `${said(reading)} ${said(inUnit)}`,
          `${said(background)} ${said(inUnit)}`,
        ),
        found: said(reading),
        expected: says.expected(said(background)),
      }),
      among,
    ).map(({ finding }) => finding);
  },
};

/** Whether a level is more than that below its background, both in decibels or both in another unit. */
const isBelow = (
  level: CellValue,
  background: CellValue | undefined,
  unit: CellValue | undefined,
): boolean => {
  if (typeof level !== "number" || typeof background !== "number") return false;
  return String(unit).startsWith("dB")
    ? level < background - DECIBELS
    : level < background * 10 ** (-DECIBELS / 20);
};
