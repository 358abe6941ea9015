import { type Area, covers, overlap } from "../../sheets/cells/area";
import type { SheetSnapshot } from "../../sheets/snapshot";

/** How far from a table its result columns may stand. */
const FARTHEST = 30;

/** Columns of a sheet, or rows of it, in which nothing stands. */
interface Room {
  /** First and last line of the table, its titles among them. */
  readonly from: number;
  readonly to: number;
  /** The last column of the table. */
  readonly edge: number;
  readonly width: number;
  /** Whether the lines of the table are columns of the sheet. */
  readonly across: boolean;
}

/** So many columns beside a table, or rows under it. */
const areaAt = ({ from, to, width, across }: Room, first: number): Area =>
  across
    ? { top: first, bottom: first + width - 1, left: from, right: to }
    : { top: from, bottom: to, left: first, right: first + width - 1 };

/** Whether nothing stands in an area: no value, no joined cells, no table, and nothing that is planned there. */
export function isFree(
  { cells, beside = [], tables }: SheetSnapshot,
  area: Area,
  planned: readonly Area[],
): boolean {
  if (planned.some((one) => overlap(one, area))) return false;
  if (cells?.merges?.some((one) => overlap(one, area))) return false;
  const isTable = tables.some(({ top, left, rowCount, headers }) =>
    overlap(area, { top, left, bottom: top + rowCount, right: left + headers.length - 1 }),
  );
  if (isTable) return false;
  for (let row = area.top; row <= area.bottom; row++)
    for (let column = area.left; column <= area.right; column++) {
      const place = { top: row, left: column, bottom: row, right: column };
      const value = cells?.cell(row, column);
      const isBlank = value === null || value === undefined || value === "";
      const isEmpty = isBlank && cells?.formula(row, column) === undefined;
      // Columns of ours that are there make way.
      if (!isEmpty && !beside.some((one) => covers(one, place))) return false;
    }
  return true;
}

/**
 * The free cells nearest to a table, right beside it or, parted from what stands between by a blank
 * column, further on; undefined where there are none.
 */
export function roomBeside(
  sheet: SheetSnapshot,
  room: Room,
  planned: readonly Area[],
): Area | undefined {
  for (let off = 1; off <= FARTHEST; off++) {
    const first = room.edge + off;
    const gap = off === 1 ? 0 : 1;
    const around = areaAt({ ...room, width: room.width + gap + 1 }, first - gap);
    if (isFree(sheet, around, planned)) return areaAt(room, first);
  }
  return undefined;
}
