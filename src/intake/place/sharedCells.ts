import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { memoizeFor } from "../../quantities/memoizeFor";
import { quoted } from "../../quantities/quoted";
import type { CellValue } from "../../records/kind";
import { a1 } from "../../sheets/cells/address";
import { isSameStored } from "../../sheets/cells/cell";
import type { RecordRows } from "../rows/recordRows";
import type { Settled } from "./resolveRepeats";

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
  readonly contradicted: (entry: Entry) => Said<Told> | undefined;
  /** Why what a cell holds is not replaced: it is of records too that no line of the export is of. */
  readonly ofOthers: (entry: Entry) => Said<Told> | undefined;
}

/**
 * In somebody's own layout one cell can hold what is true of several records, such as one temperature
 * for the three phases. It takes what all lines for these records say; what they say differently, none.
 */
export const sharedCells = (lines: readonly Settled<RecordRows>[]): SharedCells => {
  const claims = new Map<string, { readonly first: Claim; other?: Claim }>();
  const given = new Map<RecordRows, Map<number, ReadonlySet<string>>>();
  for (const { table, row, cells, line } of lines) {
    const layout = table.table?.ownLayout;
    if (!layout) continue;
    const rows = given.get(table) ?? new Map<number, ReadonlySet<string>>();
    given.set(table, rows.set(row, new Set(cells.map(([column]) => column))));
    for (const [column, value] of cells)
      addClaim(claims, cellOf({ table, row, column }), {
        line,
        value: layout.written(row, table.at?.get(column) ?? 0, value),
      });
  }
  const without = new Map<string, number>();
  return {
    contradicted: (entry) => {
      const cell = cellOf(entry);
      const { first, other } = (cell && claims.get(cell.key)) || {};
      return (
        cell &&
        first &&
        other &&
        ((text) =>
          text.intake.place.sharedApart(named(entry), cell.say(text), first.line, other.line))
      );
    },
    ofOthers: (entry) => {
      const { table, column } = entry;
      const cell = cellOf(entry);
      if (cell === undefined) return undefined;
      const count =
        without.get(cell.key) ??
        rowsWith(entry).filter((row) => !given.get(table)?.get(row)?.has(column)).length;
      without.set(cell.key, count);
      return count === 0
        ? undefined
        : (text) => text.intake.place.sharedWithout(named(entry), cell.say(text), count);
    },
  };
};

const addClaim = (
  claims: Map<string, { readonly first: Claim; other?: Claim }>,
  cell: SharedCell | undefined,
  claim: Claim,
): void => {
  if (cell === undefined) return;
  const known = claims.get(cell.key);
  if (!known) claims.set(cell.key, { first: claim });
  else if (!known.other && !isSameStored(claim.value, known.first.value)) known.other = claim;
};

const named = ({ table, column }: Entry): string =>
  quoted(table.kind.columns.find(({ id }) => id === column)?.header ?? column);

/** A cell of a sheet, and how it is called. */
interface SharedCell {
  readonly key: string;
  readonly say: Said<Told>;
}

/** The cell of somebody's own layout that holds a value; record tables have a cell for each. */
const cellOf = ({ table: { table, at }, row, column }: Entry): SharedCell | undefined => {
  const position = at?.get(column);
  const place = position === undefined ? undefined : table?.ownLayout?.holds(row, position);
  if (!place) return undefined;
  const [address, sheet] = [a1(place.row, place.column), table?.sheet ?? ""];
  return {
    key: `${address} ${sheet}`,
    say: ({ intake }) => intake.place.cellOf(address, quoted(sheet)),
  };
};

/** Whether a cell holds a value of other rows of its table too. */
export const isShared = (entry: Entry): boolean => rowsWith(entry).length > 1;

/** Cells of records, and for each that several records share those of the others too. */
export const withSharing = <T extends Entry>(cells: readonly T[]): T[] => {
  const done = new Set<string>();
  return cells.flatMap((cell) => {
    const place = isShared(cell) ? cellOf(cell)?.key : undefined;
    if (place === undefined || done.has(place)) return [cell];
    done.add(place);
    return rowsWith(cell).map((row) => ({ ...cell, row }));
  });
};

/** The rows of a table that have a value in the cell of an entry; none in a record table, where each has its own. */
const rowsWith = (entry: Entry): readonly number[] => {
  const { table, column } = entry;
  const cell = table.table?.ownLayout && cellOf(entry)?.key;
  return (cell && rowsByCell(table)(column).get(cell)) || [];
};

/** The rows of a table that have a value in a cell, worked out once for each column. */
const rowsByCell = memoizeFor((table: RecordRows) => {
  const known = new Map<string, ReadonlyMap<string, readonly number[]>>();
  return (column: string) => {
    const remembered = known.get(column);
    if (remembered) return remembered;
    const found = new Map<string, number[]>();
    for (const row of table.rows.keys()) {
      const cell = cellOf({ table, row, column })?.key;
      const rows = cell === undefined ? undefined : found.get(cell);
      if (rows) rows.push(row);
      else if (cell !== undefined) found.set(cell, [row]);
    }
    known.set(column, found);
    return found;
  };
});
