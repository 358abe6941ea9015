import { cellsIn, cellsOf } from "./cellsOf";
import type { CellValue, Row } from "./kind";

/** The cells of a column from the first row to the last. */
type Cells = readonly CellValue[];

/** The place of a row among the cells of its columns. */
const AT = Symbol("row");

/**
 * Rows as views on the cells of their columns: a row holds its place and nothing else. Spreading one therefore
 * copies no cell: `withCells` does. Tests compare them by their cells (`tests/support/rowsEqual.ts`).
 */
class ColumnRows {
  readonly rows: readonly Row[];
  private readonly held = new Map<string, { cells: Cells }>();
  private readonly prototype: Row;

  constructor(columns: ReadonlyMap<string, Cells>, count: number) {
    class View {
      readonly [AT]: number;
      constructor(at: number) {
        this[AT] = at;
      }
    }
    this.prototype = View.prototype as unknown as Row;
    this.rows = Array.from({ length: count }, (_, at) => new View(at) as unknown as Row);
    for (const [id, cells] of columns) this.put(id, cells);
    viewed.set(this.rows, this);
  }

  get columns(): ReadonlyMap<string, Cells> {
    return new Map(Array.from(this.held, ([id, { cells }]) => [id, cells]));
  }

  has(id: string): boolean {
    return this.held.has(id);
  }

  put(id: string, cells: Cells): void {
    cellsIn(this.rows).set(id, cells);
    const before = this.held.get(id);
    if (before) {
      before.cells = cells;
      return;
    }
    const held = { cells };
    this.held.set(id, held);
    Object.defineProperty(this.prototype, id, {
      enumerable: true,
      get(this: { readonly [AT]: number }) {
        return held.cells[this[AT]] ?? null;
      },
    });
  }
}

const viewed = new WeakMap<readonly Row[], ColumnRows>();

/** Rows from the cells of their columns, by id. */
export const rowsOfCells = (columns: ReadonlyMap<string, Cells>, count: number): readonly Row[] =>
  new ColumnRows(columns, count).rows;

/** Rows of which columns may get other cells while the rows that they were made from stay as they are. */
export interface RowsAnew {
  readonly rows: readonly Row[];
  /** Puts other cells into a column; cells that are those of before are the very same list. */
  readonly put: (id: string, cells: Cells) => void;
}

/** Rows that hold what others do, to have some of their columns changed. */
export function rowsAnew(given: readonly Row[]): RowsAnew {
  const views = viewed.get(given);
  if (!views) {
    const rows = given.map(copyOf);
    return {
      rows,
      put: (id, cells) => {
        rows.forEach((row, at) => {
          row[id] = cells[at] ?? null;
        });
        cellsIn(rows).set(id, cells);
      },
    };
  }
  const anew = new ColumnRows(views.columns, given.length);
  return {
    rows: anew.rows,
    put: (id, cells) => {
      const stored = cellsOf(given, id);
      const isSame = views.has(id) && stored.every((cell, at) => cell === cells[at]);
      anew.put(id, isSame ? stored : cells);
    },
  };
}

/** The columns that a row has a cell of, be it blank. */
export function idsOf(row: Row): string[] {
  const ids: string[] = [];
  for (const id in row) ids.push(id);
  return ids;
}

/** Whether something is a row that holds no cell itself. */
export const isView = (row: unknown): boolean =>
  typeof row === "object" && row !== null && AT in row;

const copyOf = (row: Row): Record<string, CellValue> => {
  if (!isView(row)) return { ...row };
  const copy: Record<string, CellValue> = {};
  for (const id in row) copy[id] = row[id] ?? null;
  return copy;
};

/** A row with some of its cells changed. */
export const withCells = (row: Row, cells: Row): Row => Object.assign(copyOf(row), cells);
