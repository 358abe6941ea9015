import type { RecordKind, Row } from "../../records/kind";
import type { OwnLayout } from "../../sheets/snapshot";

/** A record table as far as placing needs it. A table of a workbook is one. */
export interface RecordRows {
  readonly kind: RecordKind;
  /** The rows as stored, by column id. */
  readonly rows: readonly Row[];
  /** Which column ids the table has; all of the kind's where not given. */
  readonly at?: ReadonlyMap<string, number>;
  /** The workbook's table; `ownLayout` where it is a block in somebody's own layout. */
  readonly table?: {
    readonly name?: string;
    readonly sheet?: string;
    readonly ownLayout?: OwnLayout;
  };
}

/** Whether a table has a cell for a column of one of its rows. */
export const hasCell = ({ at, table }: RecordRows, row: number, column: string): boolean => {
  const position = at?.get(column);
  if (position === undefined) return at === undefined;
  return !table?.ownLayout || table.ownLayout.holds(row, position) !== undefined;
};
