import type { Context } from "../check/context";
import { isBlank } from "../records/kind";
import type { CellWrite } from "../sheets/cells/cell";
import type { TableSnapshot } from "../sheets/snapshot";

/** The cells of record tables that hold a formula, with the value that the check computed. */
export const frozenWrites = ({
  tables,
}: Context): { readonly table: TableSnapshot; readonly writes: readonly CellWrite[] }[] =>
  tables
    .filter(({ table }) => !table.ownLayout)
    .map(({ table, kind, at, judged, rows }) => ({
      table,
      writes: judged.flatMap((row, index) =>
        kind.columns.flatMap(({ id }): CellWrite[] => {
          const column = at.get(id);
          if (column === undefined || table.formula(index, column) === undefined) return [];
          const value = row[id] ?? rows[index]?.[id] ?? null;
          return [{ row: index, column, value: isBlank(value) ? null : value }];
        }),
      ),
    }));
