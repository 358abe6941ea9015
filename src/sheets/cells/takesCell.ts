import { tokenize } from "@borgar/fx/xlsx";
import { covers, readArea } from "./area";

const REFERENCES: ReadonlySet<string> = new Set(["range", "range_beam"]);

/**
 * Whether a formula takes a cell of its own sheet, alone or within an area, a column or a row.
 *
 * @param formula in A1 references, without the equals sign
 * @param row of the cell, from 0, as `column`
 * @example takesCell("IF(E6>=H$2,1,0)", 5, 4) // true: E6
 */
export const takesCell = (formula: string, row: number, column: number): boolean =>
  tokenize(formula, { withLocation: false, mergeRefs: true }).some(({ type, value }) => {
    // An exclamation mark stands after the name of another sheet.
    const area = REFERENCES.has(type) && !value.includes("!") ? readArea(value) : undefined;
    return area && covers(area, { top: row, bottom: row, left: column, right: column });
  });
