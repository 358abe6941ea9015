import { overlap, readAreas } from "./area";
import type { SheetCells, Snapshot, TableSnapshot } from "./snapshot";

/** Rows of one table, as numbers from 0 within its body. */
export interface TableRows {
  readonly table: TableSnapshot;
  readonly rows: readonly number[];
}

/** Rows of a sheet in somebody's own layout, from 0. */
export interface SheetRows {
  readonly cells: SheetCells;
  readonly rows: readonly number[];
}

/**
 * The rows of tables, and of sheets in somebody's own layout, that an edit of cells reaches; there also
 * those with formulas, which may come to something else. Undefined where it may have changed a table's
 * headers or place, how far such a sheet goes, or a sheet that is not known, so that the whole workbook
 * has to be read again.
 *
 * @param sheetId id of the sheet, as Excel's event gives it
 * @param address A1 addresses of the edited cells, parted by commas
 * @example editedRows(snapshot, "{1}", "C5:C7") // [{ table, rows: [0, 1, 2] }]
 */
export function editedRows(
  snapshot: Snapshot,
  sheetId: string,
  address: string,
): (TableRows | SheetRows)[] | undefined {
  const sheet = snapshot.sheets.find(({ id }) => id === sheetId);
  const areas = readAreas(address);
  if (!sheet || !areas) return undefined;
  const found: (TableRows | SheetRows)[] = [];
  for (const table of sheet.tables) {
    const right = table.left + table.headers.length - 1;
    const first = table.top + 1;
    const last = table.top + table.rowCount;
    const header = { top: table.top, left: table.left, bottom: table.top, right: right + 1 };
    // A cell typed beside or below a table makes it grow.
    const below = { top: last + 1, left: table.left, bottom: last + 1, right };
    const beside = { top: first, left: right + 1, bottom: last, right: right + 1 };
    const rows = new Set<number>();
    for (const area of areas) {
      if ([header, below, beside].some((edge) => overlap(area, edge))) return undefined;
      if (!overlap(area, { top: first, left: table.left, bottom: last, right })) continue;
      for (let row = Math.max(area.top, first); row <= Math.min(area.bottom, last); row++)
        rows.add(row - first);
    }
    if (rows.size > 0) found.push({ table, rows: [...rows] });
  }
  for (const { cells, id } of snapshot.sheets) {
    if (!cells) continue;
    const rows = new Set(formulaRows(cells));
    for (const area of id === sheetId ? areas : []) {
      if (area.bottom >= cells.rowCount || area.right >= cells.columnCount) return undefined;
      for (let row = area.top; row <= area.bottom; row++) rows.add(row);
    }
    if (rows.size > MOST_ROWS) return undefined;
    if (rows.size > 0) found.push({ cells, rows: [...rows] });
  }
  return found;
}

/** More rows of a sheet than these are read with the whole workbook, in pieces. */
const MOST_ROWS = 2_000;

const known = new WeakMap<SheetCells, readonly number[]>();

/** Rows of a sheet in which a formula stands. */
function formulaRows(cells: SheetCells): readonly number[] {
  const before = known.get(cells);
  if (before) return before;
  const columns = Array.from({ length: cells.columnCount }, (_, column) => column);
  const rows = Array.from({ length: cells.rowCount }, (_, row) => row).filter((row) =>
    columns.some((column) => cells.formula(row, column) !== undefined),
  );
  known.set(cells, rows);
  return rows;
}
