import { groupBy } from "../quantities/groupedBy";
import { a1 } from "./cells/address";
import { editedRows, type SheetRows, type TableRows } from "./editedRows";
import type { RecordTable } from "./recordTable";
import type { Snapshot } from "./snapshot";

/** A cell of a record table that was written, by row of its body and id of its column. */
interface FilledCell {
  readonly table: RecordTable;
  readonly row: number;
  readonly column: string;
}

/**
 * The rows that written readings reach, as an edit of their cells would: in record tables, and in sheets
 * of somebody's own. Undefined where the whole workbook has to be read again, as for very many.
 */
export function filledRows(
  snapshot: Snapshot,
  cells: readonly FilledCell[],
): (TableRows | SheetRows)[] | undefined {
  const sheets = groupBy(cells, ({ table }) => table.table.sheet).map((own) => {
    const [first] = own;
    const id = snapshot.sheets.find(({ name }) => name === first?.table.table.sheet)?.id;
    const places = own.map(placeOf);
    return id === undefined || places.includes(undefined)
      ? undefined
      : editedRows(snapshot, id, [...new Set(places)].join());
  });
  const all = sheets.flatMap((rows) => rows ?? []);
  const isTold = sheets.every((rows) => rows !== undefined);
  return isTold && all.reduce((sum, { rows }) => sum + rows.length, 0) <= MAX_ROWS
    ? all
    : undefined;
}

/** More rows than these are read with the whole workbook, in pieces. */
const MAX_ROWS = 2_000;

/** The address of a cell on its sheet; undefined where an own layout has none for it. */
function placeOf({ table: { table, at }, row, column }: FilledCell): string | undefined {
  const index = at.get(column);
  if (index === undefined) return undefined;
  if (!table.ownLayout) return a1(table.top + 1 + row, table.left + index);
  const held = table.ownLayout.holds(row, index);
  return held && a1(held.row, held.column);
}
