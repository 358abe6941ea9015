import { type CellGrid, widthOf } from "./grid";

/** How far a sheet is used. */
export interface Extent {
  readonly rows: number;
  readonly columns: number;
}

/** A sheet of so many places is taken as it is. */
const PLENTY = 10_000_000;
/** Of a larger one, what stands behind so many blank rows or columns is a stray cell, not a record. */
const [ROW_GAP, COLUMN_GAP] = [10_000, 500];

/**
 * How far a sheet is used without stray cells far off, such as a blank typed into the last row: whoever goes
 * through it place by place would find nothing there for hours. Such cells still can be asked for.
 */
export function extentOf(grid: CellGrid): Extent {
  const rows = grid.starts.length - 1;
  const columns = widthOf(grid);
  if (rows * columns <= PLENTY) return { rows, columns };
  const near = nearRows(grid);
  const width = nearColumns(grid, near);
  const most = Math.max(PLENTY, 10 * (grid.starts[near] ?? 0));
  return { rows: Math.min(near, Math.floor(most / Math.max(1, width))), columns: width };
}

function nearRows({ starts }: CellGrid): number {
  let near = 0;
  for (let row = 0; row + 1 < starts.length; row++) {
    if (starts[row] === starts[row + 1]) continue;
    if (near > 0 && row - near > ROW_GAP) break;
    near = row + 1;
  }
  return near;
}

function nearColumns({ starts, columns }: CellGrid, rows: number): number {
  const used = new Set(columns.subarray(0, starts[rows] ?? 0));
  let near = 0;
  for (const column of [...used].sort((one, other) => one - other)) {
    if (near > 0 && column - near > COLUMN_GAP) break;
    near = column + 1;
  }
  return near;
}

/** Joined cells as far as a sheet is used; where more are joined than there are, they lie over one another and the rest is left out. */
export function joinsWithin<A extends { top: number; left: number; bottom: number; right: number }>(
  joins: readonly A[],
  { rows, columns }: Extent,
): A[] {
  let free = rows * columns;
  return joins.flatMap((join) => {
    const bottom = Math.min(join.bottom, rows - 1);
    const right = Math.min(join.right, columns - 1);
    if (bottom < join.top || right < join.left) return [];
    free -= (bottom - join.top + 1) * (right - join.left + 1);
    return free < 0 ? [] : [{ ...join, bottom, right }];
  });
}
