import { type Area, overlap, readAreas } from "./cells/area";
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
  const edited: (TableRows | SheetRows | undefined)[] = [
    ...sheet.tables.map((table) => editedInTable(table, areas)),
    ...snapshot.sheets.flatMap(({ cells, id }) =>
      cells ? [editedInSheet(cells, id === sheetId ? areas : [])] : [],
    ),
  ];
  return edited.every((part) => part !== undefined)
    ? edited.filter(({ rows }) => rows.length > 0)
    : undefined;
}

/** The rows of a table in some areas; undefined where its headers or its extent may have changed. */
function editedInTable(table: TableSnapshot, areas: readonly Area[]): TableRows | undefined {
  const { top, left, headers, rowCount } = table;
  const right = left + headers.length - 1;
  const [first, last] = [top + 1, top + rowCount];
  const edges = [
    { top, left, bottom: top, right: right + 1 },
    // A cell typed beside or below a table makes it grow.
    { top: last + 1, left, bottom: last + 1, right },
    { top: first, left: right + 1, bottom: last, right: right + 1 },
  ];
  if (areas.some((area) => edges.some((edge) => overlap(area, edge)))) return undefined;
  const body = { top: first, left, bottom: last, right };
  const rows = areas
    .filter((area) => overlap(area, body))
    .flatMap((area) =>
      rowsBetween(Math.max(area.top, first) - first, Math.min(area.bottom, last) - first),
    );
  return { table, rows: [...new Set(rows)] };
}

/** The rows of a sheet in some areas, and those with formulas; undefined where the sheet has grown, or for too many. */
function editedInSheet(cells: SheetCells, areas: readonly Area[]): SheetRows | undefined {
  const { rowCount, columnCount } = cells;
  if (areas.some(({ bottom, right }) => bottom >= rowCount || right >= columnCount))
    return undefined;
  const rows = new Set([
    ...formulaRows(cells),
    ...areas.flatMap(({ top, bottom }) => rowsBetween(top, bottom)),
  ]);
  return rows.size > MAX_ROWS ? undefined : { cells, rows: [...rows] };
}

const rowsBetween = (first: number, last: number): number[] =>
  Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => first + at);

/** More rows of a sheet than these are read with the whole workbook, in pieces. */
const MAX_ROWS = 2_000;

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
