import { covers, readArea } from "./area";

const TEXT = /"(?:[^"]|"")*"/g;
/** A cell or an area of the formula's own sheet: an exclamation mark stands before that of another. */
const AREA =
  /(?<![\p{L}\d_.!:$'\]])\$?[A-Z]{1,3}\$?\d{1,7}(?::\$?[A-Z]{1,3}\$?\d{1,7})?(?![\p{L}\d_.(!])/gu;

/**
 * Whether a formula takes a cell of its own sheet, alone or within an area.
 *
 * @param formula in A1 references, without the equals sign
 * @param row of the cell, from 0, as `column`
 * @example takesCell("IF(E6>=H$2,1,0)", 5, 4) // true: E6
 */
export const takesCell = (formula: string, row: number, column: number): boolean =>
  [...formula.replace(TEXT, '""').matchAll(AREA)].some(([address]) => {
    const area = readArea(address);
    return area && covers(area, { top: row, bottom: row, left: column, right: column });
  });
