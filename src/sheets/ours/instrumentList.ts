import { type CellValue, isBlank, type Row } from "../../records/kind";
import type { SheetCells } from "../snapshot";

/** Titles of a list of instruments in trade use, in small letters and without punctuation; common practice, no source. */
const TITLES: Readonly<Record<string, readonly string[]>> = {
  id: [
    ...["id", "instrument", "instrument id", "instrument no", "equipment", "equipment no"],
    ...["equipment id", "tag", "tag no", "asset no", "reference"],
  ],
  kind: ["description", "type", "instrument type", "make and type"],
  serial: ["serial", "serial no", "serial number", "sn", "s n"],
  calibrated: [
    ...["calibrated", "calibrated on", "calibration", "calibration date", "last calibration"],
    ...["cal date", "date of calibration"],
  ],
  due: [
    ...[
      "due",
      "due date",
      "cal due",
      "calibration due",
      "calibration due date",
      "next calibration",
    ],
    ...["valid until", "calibration valid until"],
  ],
};

/** A list's titles stand within so many rows from the top of its sheet. */
const TOP = 30;

/**
 * The instruments that a sheet of somebody's own lists: below a row of titles that names the instrument
 * and when its calibration is due, up to the first row without an instrument.
 *
 * @returns rows by the column ids of the table of instruments; none where the sheet has no such list
 * @example instrumentList(cells) // [{ id: "IR-1", serial: "123", calibrated: 46000, due: 46365 }]
 */
export const instrumentList = ({ rowCount, columnCount, cell }: SheetCells): readonly Row[] => {
  for (let top = 0; top < Math.min(TOP, rowCount); top++) {
    const at = titlesOf(Array.from({ length: columnCount }, (_, column) => cell(top, column)));
    const id = at.get("id");
    if (id === undefined || !at.has("due")) continue;
    const rows: Row[] = [];
    for (let row = top + 1; row < rowCount && !isBlank(cell(row, id)); row++)
      rows.push(Object.fromEntries([...at].map(([field, column]) => [field, cell(row, column)])));
    return rows;
  }
  return [];
};

/** Which column holds what, by the first title that says so. */
const titlesOf = (cells: readonly CellValue[]): ReadonlyMap<string, number> => {
  const at = new Map<string, number>();
  cells.forEach((title, column) => {
    const words = String(title ?? "")
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, " ")
      .trim();
    const field = Object.keys(TITLES).find((field) => TITLES[field]?.includes(words));
    if (field !== undefined && !at.has(field)) at.set(field, column);
  });
  return at;
};
