import type { GridStyle } from "./gridLook";
import { type GridCell, type GridLines, putCell, type SheetData, SPARE } from "./sheetData";

/** What the grid is to be told of a cell; null where it, or a property of it, is to go. */
export type CellChange =
  | {
      [K in keyof GridCell]: GridCell[K] | null;
    }
  | null;

/** Whether a sheet differs only in cells: widths, heights, joined and frozen cells are as before, and it has room. */
export const isSameFrame = (before: SheetData, after: SheetData): boolean =>
  after.rowCount - SPARE.rows <= before.rowCount &&
  after.columnCount - SPARE.columns <= before.columnCount &&
  frame(before) === frame(after);

const frame = ({ cellData: _cells, rowCount: _rows, columnCount: _columns, ...rest }: SheetData) =>
  JSON.stringify(rest);

/** The cells that differ: what each is to become, and whether that is a matter of looks alone. */
export function cellChanges(
  before: GridLines,
  after: GridLines,
): { readonly changes: GridLines<CellChange>; readonly kind: "none" | "looks" | "content" } {
  const changes: GridLines<CellChange> = {};
  let kind: "none" | "looks" | "content" = "none";
  for (const [row, column] of places(before, after)) {
    const change = cellChange(before[row]?.[column], after[row]?.[column]);
    if (change === undefined) continue;
    putCell(changes, row, column, change);
    if (kind !== "content") kind = change === null || "f" in change ? "content" : "looks";
  }
  return { changes, kind };
}

function* places(before: GridLines, after: GridLines): Generator<[number, number]> {
  for (const row of new Set([...Object.keys(before), ...Object.keys(after)].map(Number)))
    for (const column of new Set(
      [...Object.keys(before[row] ?? {}), ...Object.keys(after[row] ?? {})].map(Number),
    ))
      yield [row, column];
}

/** What a cell is to become; undefined where it stays. */
export function cellChange(
  before: GridCell | undefined,
  after: GridCell | undefined,
): CellChange | undefined {
  if (!after) return before && null;
  const content = contentChange(before ?? {}, after);
  const looks = styleChange(before?.s, after.s);
  return content || looks ? { ...content, ...(looks ? { s: looks } : {}) } : undefined;
}

/** What a cell holds, where that is to change; the value of a formula is the grid's own affair. */
function contentChange(before: GridCell, { v = null, f, t }: GridCell): CellChange | undefined {
  const isSame = before.f === f && (f !== undefined || (before.v ?? null) === v);
  return isSame ? undefined : { v, f: f ?? null, ...(t ? { t } : {}) };
}

/** What a style is to become: properties that go are null; undefined where it stays. */
function styleChange(before: GridStyle = {}, after: GridStyle = {}) {
  if (JSON.stringify(before) === JSON.stringify(after)) return undefined;
  const gone = Object.keys(before).filter((name) => !(name in after));
  return { ...Object.fromEntries(gone.map((name) => [name, null])), ...after } as GridStyle;
}
