import type { CellValue, Column } from "../../records/kind";
import type { CellWrite } from "../cells/cell";
import { asRecordTable } from "../recordTable";
import type { TableSnapshot } from "../snapshot";
import type { PlannedSheet } from "./plannedSheet";

type Stored = Readonly<Record<string, CellValue>>;

/**
 * The cells to write, and the rows to add at a table's foot, so that rows come under those it holds.
 *
 * @param table the table as it stands; a new one, of one blank row, where not given
 */
export function appended(
  columns: readonly Column[],
  rows: readonly Stored[],
  table: TableSnapshot | undefined,
): { readonly added: number; readonly writes: readonly CellWrite[] } {
  const stored = table && asRecordTable({ columns }, table);
  const isEmpty = (row: Stored | undefined) => columns.every(({ id }) => (row?.[id] ?? "") === "");
  const height = stored ? stored.rows.length : 1;
  let used = stored ? height : 0;
  while (used > 0 && isEmpty(stored?.rows[used - 1])) used -= 1;
  return {
    added: Math.max(0, used + rows.length - height),
    writes: rows.flatMap((row, index) =>
      columns.flatMap(({ id }, position): CellWrite[] => {
        const column = stored ? stored.at.get(id) : position;
        return column === undefined ? [] : [{ row: used + index, column, value: row[id] ?? null }];
      }),
    ),
  };
}

/** Every cell of a planned sheet that holds values alone. */
export const writesOf = ({ rows, columns }: PlannedSheet): CellWrite[] =>
  rows.flatMap((row, at) =>
    columns.map(({ id }, column) => ({ row: at, column, value: row[id] ?? null })),
  );
