import { PlainCell } from "./plainCell";
import { Repeats } from "./repeats";

const GT = 62;
const END = Array.from("</row>", (letter) => letter.charCodeAt(0));

/**
 * Reads the style of each cell of a row by its column, from where the row begins to where it ends; undefined
 * for a row of which not all cells are of the plain form.
 */
export function plainStyles(
  bytes: Uint8Array,
): (from: number, to: number) => ReadonlyMap<number, number> | undefined {
  const cell = new PlainCell(bytes, new Repeats(bytes));
  return (from, to) => {
    const styles = new Map<number, number>();
    let at = bytes.indexOf(GT, from) + 1;
    if (at === to) return styles;
    while (cell.read(at)) {
      styles.set(cell.column, cell.style);
      at = cell.end;
    }
    return END.every((byte, place) => bytes[at + place] === byte) && at + END.length === to
      ? styles
      : undefined;
  };
}
