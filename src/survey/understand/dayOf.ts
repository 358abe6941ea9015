import { readDate } from "../../intake/words/readDate";
import type { Cell } from "../read/cells";

/** Serial numbers that a spreadsheet writes for days: 1982 to 2099. */
const [FIRST_DAY, LAST_DAY] = [30_000, 73_050];

/** The day that a cell holds, as a serial number. */
export const dayOf = (cell: Cell): number | undefined => {
  if (cell.day !== undefined) return cell.day;
  if (typeof cell.value === "number")
    return cell.value > FIRST_DAY && cell.value < LAST_DAY ? Math.floor(cell.value) : undefined;
  const read = readDate(cell.text, cell.order);
  return read.ok ? read.value : undefined;
};
