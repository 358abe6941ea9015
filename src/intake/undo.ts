import { keyIds, rowKey } from "../records/kind";
import { sameCell } from "../sheets/cell";
import type { LastIntake } from "../sheets/lastIntake";
import type { PlacedCell } from "./placement";
import type { RecordRows } from "./recordRows";

/** A table as far as taking back needs it: its name, and its rows by column id. */
export interface NamedRows extends RecordRows {
  readonly table: { readonly name: string };
}

/** What taking back the last intake comes to. */
export interface Undone<T extends NamedRows> {
  /** Cells to write, each with what it held before. */
  readonly cells: readonly PlacedCell<T>[];
  /** Cells that were changed since, whose record is gone, or whose table is; they stay as they are. */
  readonly refused: readonly {
    readonly cell: LastIntake["cells"][number];
    readonly reason: string;
  }[];
}

/** What an intake is remembered by. */
export const rememberIntake = <T extends NamedRows>(
  placed: readonly PlacedCell<T>[],
  history: LastIntake["history"],
  files: readonly string[],
  on: number,
): LastIntake => {
  const cells = new Map<string, LastIntake["cells"][number]>();
  for (const { table, row, column, old, value } of placed) {
    const at = JSON.stringify([table.table.name, row, column]);
    // Of two files that wrote the same cell, what it held before the first.
    const before = cells.get(at)?.old ?? old;
    const key = rowKey(table.rows[row] ?? {}, keyIds(table.kind));
    cells.set(at, { table: table.table.name, key, row, column, old: before, value });
  }
  return { on, files: [...files], cells: [...cells.values()], history: [...history] };
};

/**
 * The last intake taken back: every cell that still holds what the intake wrote gets what it held
 * before. A cell that was changed since is refused.
 */
export const undoIntake = <T extends NamedRows>(
  last: LastIntake,
  tables: readonly T[],
): Undone<T> => {
  const rows = new Map(tables.map((table) => [table.table.name, rowsByKey(table)]));
  const cells: PlacedCell<T>[] = [];
  const refused: Undone<T>["refused"][number][] = [];
  for (const cell of last.cells) {
    const table = tables.find(({ table }) => table.name === cell.table);
    const found = rows.get(cell.table)?.get(cell.key) ?? [];
    const row = found.includes(cell.row) ? cell.row : found.length === 1 ? found[0] : undefined;
    if (!table || row === undefined) {
      refused.push({
        cell,
        reason: `${cell.key}: the record is no longer ${table ? "one row of its table" : "there"}`,
      });
      continue;
    }
    const now = table.rows[row]?.[cell.column] ?? null;
    if (sameCell(now, cell.value))
      cells.push({
        table,
        row,
        column: cell.column,
        old: now,
        value: cell.old,
        source: { file: last.files[0] ?? "", line: 0 },
      });
    else {
      const header = table.kind.columns.find(({ id }) => id === cell.column)?.header ?? cell.column;
      refused.push({
        cell,
        reason: `${cell.key}, "${header}": holds ${JSON.stringify(now)} now, the intake had written ${JSON.stringify(cell.value)}`,
      });
    }
  }
  return { cells, refused };
};

const rowsByKey = ({ kind, rows }: RecordRows): ReadonlyMap<string, number[]> => {
  const ids = keyIds(kind);
  const found = new Map<string, number[]>();
  rows.forEach((row, index) => {
    const key = rowKey(row, ids);
    const sofar = found.get(key);
    if (sofar) sofar.push(index);
    else found.set(key, [index]);
  });
  return found;
};
