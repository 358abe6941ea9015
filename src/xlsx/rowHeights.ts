import type { Sheet, WriteSheet } from "hucre/xlsx";
import { corners } from "./corners";

const [LINE, BESIDE] = [12, 4];
/** Letters of 9 points that a column holds beside each other, over its width in characters of 10 points. */
const LETTERS = 1.25;

/**
 * Lines that a text takes in a column, parted at its spaces as a spreadsheet does.
 *
 * @param width of the column, in characters
 * @example linesIn("maximum: data sheet", 14) // 2
 */
export function linesIn(text: string, width: number): number {
  const room = Math.max(1, Math.floor((width - 2) * LETTERS));
  return text.split("\n").reduce((lines, paragraph) => {
    let [count, used] = [1, 0];
    for (const { length } of paragraph.split(" ")) {
      if (used > 0 && used + 1 + length > room) [count, used] = [count + 1, 0];
      used += (used > 0 ? 1 : 0) + length;
      count += Math.ceil(used / room) - 1;
      used = ((used - 1) % room) + 1;
    }
    return lines + Math.max(1, count);
  }, 0);
}

export type Laid = Pick<WriteSheet | Sheet, "columns" | "rowDefs" | "tables"> & {
  cells?: Sheet["cells"] | WriteSheet["cells"];
};

/**
 * Heights, in points, of those rows in tables of ours whose text needs more than a line, by sheet row from
 * 0; a row that somebody gave a height has that.
 */
export function rowHeights({ cells, columns, rowDefs, tables }: Laid): Map<number, number> {
  const lines = new Map<number, number>();
  const ours = (tables ?? [])
    .filter(({ name, range }) => range && name.startsWith("Gear"))
    .map(({ range }) => corners(range as string));
  for (const [at, { value, formulaResult, style }] of ours.length > 0 ? (cells ?? []) : []) {
    const text = formulaResult ?? value;
    if (!style?.alignment?.wrapText || typeof text !== "string" || text.length < 6) continue;
    const [row = 0, column = 0] = at.split(",").map(Number);
    const inside = ours.some(
      ({ top, left, bottom, right }) =>
        row > top && row <= bottom && column >= left && column <= right,
    );
    const width = columns?.[column]?.width;
    if (!inside || width === undefined || rowDefs?.get(row)?.height !== undefined) continue;
    lines.set(row, Math.max(lines.get(row) ?? 1, linesIn(text, width)));
  }
  return new Map(
    [...lines].flatMap(([row, count]) => (count > 1 ? [[row, count * LINE + BESIDE]] : [])),
  );
}
