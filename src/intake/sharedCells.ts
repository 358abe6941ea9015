import { onceFor } from "../quantities/onceFor";
import { quoted } from "../quantities/quoted";
import type { CellValue } from "../records/kind";
import { a1 } from "../sheets/address";
import { sameCell } from "../sheets/cell";
import type { RecordRows } from "./recordRows";
import type { Settled } from "./settle";

/** A value for one cell of a record, by column id. */
interface Entry {
  readonly table: RecordRows;
  readonly row: number;
  readonly column: string;
}

/** What a line gives for a cell, as the layout has it. */
interface Claim {
  readonly line: number;
  readonly value: CellValue;
}

/** What the lines of an export give for cells of somebody's own layout that several records share. */
export interface SharedCells {
  /** Why a cell takes nothing: lines give it different values. */
  readonly contradicted: (entry: Entry) => string | undefined;
  /** Why what a cell holds is not replaced: it is of records too that no line of the export is of. */
  readonly ofOthers: (entry: Entry) => string | undefined;
}

/**
 * In somebody's own layout one cell can hold what is true of several records, such as one temperature
 * for the three phases. It takes what all lines for these records say; what they say differently, none.
 */
export const sharedCells = (lines: readonly Settled<RecordRows>[]): SharedCells => {
  const claims = new Map<string, Claim[]>();
  const given = new Map<RecordRows, Map<number, ReadonlySet<string>>>();
  for (const { table, row, cells, line } of lines) {
    const seen = table.table?.seen;
    if (!seen) continue;
    const rows = given.get(table) ?? new Map<number, ReadonlySet<string>>();
    given.set(table, rows.set(row, new Set(cells.map(([column]) => column))));
    for (const [column, value] of cells) {
      const cell = cellOf({ table, row, column });
      if (cell === undefined) continue;
      const claim = { line, value: seen.written(row, table.at?.get(column) ?? 0, value) };
      const there = claims.get(cell);
      if (there) there.push(claim);
      else claims.set(cell, [claim]);
    }
  }
  return {
    contradicted: (entry) => {
      const cell = cellOf(entry);
      const [first, ...others] = (cell && claims.get(cell)) || [];
      const other = first && others.find(({ value }) => !sameCell(value, first.value));
      return (
        other &&
        `${named(entry)} is one cell for several records, ${cell}, and lines ${first.line} and ${other.line} give it different values`
      );
    },
    ofOthers: (entry) => {
      const { table, column } = entry;
      const without = sharing(entry).filter((row) => !given.get(table)?.get(row)?.has(column));
      return without.length === 0
        ? undefined
        : `${named(entry)} is one cell for several records, ${cellOf(entry)}, and the export has no value for ${without.length} of them`;
    },
  };
};

const named = ({ table, column }: Entry): string =>
  quoted(table.kind.columns.find(({ id }) => id === column)?.header ?? column);

/** The cell of somebody's own layout that holds a value; record tables have a cell for each. */
const cellOf = ({ table: { table, at }, row, column }: Entry): string | undefined => {
  const position = at?.get(column);
  const place = position === undefined ? undefined : table?.seen?.holds(row, position);
  return place && `${a1(place.row, place.column)} of the sheet ${quoted(table?.sheet ?? "")}`;
};

/** The other rows of a table that have a value in the same cell. */
export const sharing = (entry: Entry): readonly number[] => {
  const { table, row, column } = entry;
  const cell = table.table?.seen && cellOf(entry);
  const rows = cell ? rowsByCell(table)(column).get(cell) : undefined;
  return rows?.filter((other) => other !== row) ?? [];
};

/** The rows of a table that have a value in a cell, worked out once for each column. */
const rowsByCell = onceFor((table: RecordRows) => {
  const known = new Map<string, ReadonlyMap<string, readonly number[]>>();
  return (column: string) => {
    const before = known.get(column);
    if (before) return before;
    const found = new Map<string, number[]>();
    for (const row of table.rows.keys()) {
      const cell = cellOf({ table, row, column });
      const rows = cell === undefined ? undefined : found.get(cell);
      if (rows) rows.push(row);
      else if (cell !== undefined) found.set(cell, [row]);
    }
    known.set(column, found);
    return found;
  };
});
