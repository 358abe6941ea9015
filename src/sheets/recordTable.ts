import type { Lineup } from "../lineup/lineup";
import { rowsOfCells } from "../records/cellsOf";
import type { CellValue, RecordKind, Row } from "../records/kind";
import { kindFor } from "../records/kindFor";
import { KINDS } from "../records/kinds";
import { type Snapshot, type TableSnapshot, tablesOf } from "./snapshot";

/** A table of the workbook understood as the records of one kind. */
export interface RecordTable {
  readonly kind: RecordKind;
  readonly table: TableSnapshot;
  /** Position in the table of each column id that it has. */
  readonly at: ReadonlyMap<string, number>;
  /** The rows, by column id, as stored. */
  readonly rows: readonly Row[];
}

/**
 * The record tables of a workbook. A table is known by its headers, so that it may be renamed, moved and
 * given more columns: it has every key column and every reading column of the kind. One that goes by
 * our own name is known by that, though headers were changed.
 *
 * @param lineup which says what the phases in its headers are called
 */
export const recordTables = (snapshot: Snapshot, lineup = snapshot.lineup): RecordTable[] => {
  const lineups = lineup ? [lineup] : [];
  return tablesOf(snapshot).flatMap((table) => {
    const kind = KINDS.find(
      (kind) =>
        kind.table === table.name ||
        variantsOf(kind, lineups).some((one) => hasReadings(one, table)),
    );
    return kind ? [asRecordTable(headedAs(kind, table, lineups), table)] : [];
  });
};

/** A kind as each of some lineups has it, and as it is without one. */
const variantsOf = (kind: RecordKind, lineups: readonly Lineup[]): RecordKind[] => [
  ...new Set([...lineups.map((lineup) => kindFor(kind, lineup)), kind]),
];

const hasReadings = ({ columns }: RecordKind, { headers }: TableSnapshot): boolean =>
  columns.every(
    ({ role, need, header }) => !(role === "key" || need === "reading") || headers.includes(header),
  );

/** A kind with the headers that a table has: as the first of some lineups names the phases by which its readings are there. */
export const headedAs = (
  kind: RecordKind,
  table: TableSnapshot,
  lineups: readonly Lineup[],
): RecordKind => {
  const variants = variantsOf(kind, lineups);
  return variants.find((one) => hasReadings(one, table)) ?? variants[0] ?? kind;
};

/** The cells of one column of a table's body. */
function cellsDown({ rowCount, cell }: TableSnapshot, column: number): readonly CellValue[] {
  const cells: CellValue[] = [];
  for (let row = 0; row < rowCount; row++) cells.push(cell(row, column));
  return cells;
}

export function asRecordTable<K extends Pick<RecordKind, "columns">>(
  kind: K,
  table: TableSnapshot,
): { kind: K; table: TableSnapshot; at: ReadonlyMap<string, number>; rows: readonly Row[] } {
  const at = new Map<string, number>();
  for (const { id, header } of kind.columns) {
    const position = table.headers.indexOf(header);
    if (position >= 0) at.set(id, position);
  }
  const columns = new Map([...at].map(([id, column]) => [id, cellsDown(table, column)]));
  const rows = rowsOfCells(columns, table.rowCount);
  return { kind, table, at, rows };
}
