import { overlap, readAreas } from "./area";
import type { Snapshot, TableSnapshot } from "./snapshot";

/**
 * The rows of tables that an edit of cells reaches. Undefined where it may have changed a table's
 * headers or place, or a sheet that is not known, so that the whole workbook has to be read again.
 *
 * @param sheetId id of the sheet, as Excel's event gives it
 * @param address A1 addresses of the edited cells, parted by commas
 * @example editedRows(snapshot, "{1}", "C5:C7") // [{ table, rows: [0, 1, 2] }]
 */
export function editedRows(
  snapshot: Snapshot,
  sheetId: string,
  address: string,
): { readonly table: TableSnapshot; readonly rows: readonly number[] }[] | undefined {
  const sheet = snapshot.sheets.find(({ id }) => id === sheetId);
  const areas = readAreas(address);
  if (!sheet || !areas) return undefined;
  const found: { table: TableSnapshot; rows: number[] }[] = [];
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
  return found;
}
