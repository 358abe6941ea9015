import { memoizeFor } from "../../src/quantities/memoizeFor";
import type { CellValue } from "../../src/records/kind";
import type { Plan } from "../../src/sheets/plan/plan";
import { reconcile } from "../../src/sheets/plan/reconcile";
import type { Snapshot, TableSnapshot } from "../../src/sheets/snapshot";

/** A workbook in memory whose cells a test may change before it is checked. */
export interface MemoryBook {
  readonly snapshot: Snapshot;
  /** Sets a cell of a table by row number and header; takes its formula away unless that is given. */
  set(table: string, row: number, header: string, value: CellValue, formula?: string): void;
  /** Position in A1 of a cell. */
  at(table: string, row: number, header: string): string;
  copyRow(table: string, from: number): void;
  /** Puts a row at the foot of a table, its cells by header. */
  addRow(table: string, cells: Readonly<Record<string, CellValue>>): void;
  removeRow(table: string, row: number): void;
  removeTable(table: string): void;
  rename(table: string, header: string, to: string): void;
  /** Takes away what every formula was worked out to, as a program that cannot calculate leaves it. */
  forget(): void;
}

interface Cell {
  readonly value: CellValue;
  readonly formula?: string;
}

const BLANK: Cell = { value: null };

/** Tables as a plan comes to them, worked out once for each plan. */
const builtTables = memoizeFor((plan: Plan) =>
  reconcile(plan).create.map(({ planned, writes }) => {
    const cells = planned.rows.map(() => planned.columns.map(() => BLANK));
    for (const { row, column, value, formula } of writes)
      (cells[row] as Cell[])[column] = { value, formula };
    return {
      name: planned.table,
      sheet: planned.sheet,
      headers: planned.columns.map(({ header }) => header),
      cells,
    };
  }),
);

/** What a plan comes to when it is written to a new workbook, without a file. */
export function memoryBook(plan: Plan): MemoryBook {
  const tables = builtTables(plan).map(({ headers, cells, ...table }) => ({
    ...table,
    headers: [...headers],
    cells: cells.map((row) => [...row]),
  }));
  const find = (name: string) => {
    const table = tables.find((table) => table.name === name);
    if (!table) throw new Error(`no table ${name}`);
    return table;
  };
  return {
    get snapshot() {
      return {
        lineup: plan.lineup,
        sheets: tables.map(({ name, sheet, headers, cells }) => ({
          name: sheet,
          tables: [
            {
              name,
              sheet,
              top: 3,
              left: 0,
              headers,
              rowCount: cells.length,
              cell: (row, column) => cells[row]?.[column]?.value ?? null,
              formula: (row, column) => cells[row]?.[column]?.formula,
            } satisfies TableSnapshot,
          ],
        })),
      };
    },
    set: (name, row, header, value, formula) => {
      const { cells, headers } = find(name);
      const at = headers.indexOf(header);
      if (at < 0) throw new Error(`no column ${header} in ${name}`);
      (cells[row] as Cell[])[at] = { value, formula };
    },
    at: (name, row, header) => `${letters(find(name).headers.indexOf(header))}${row + 5}`,
    copyRow: (name, from) => {
      const { cells } = find(name);
      cells.push([...(cells[from] as Cell[])]);
    },
    addRow: (name, cells) => {
      const { cells: rows, headers } = find(name);
      const unknown = Object.keys(cells).find((header) => !headers.includes(header));
      if (unknown) throw new Error(`no column ${unknown} in ${name}`);
      rows.push(headers.map((header) => ({ value: cells[header] ?? null })));
    },
    removeRow: (name, row) => {
      find(name).cells.splice(row, 1);
    },
    rename: (name, header, to) => {
      const { headers } = find(name);
      headers[headers.indexOf(header)] = to;
    },
    forget: () => {
      for (const { cells } of tables)
        for (const row of cells)
          for (const [at, cell] of row.entries())
            if (cell.formula !== undefined) row[at] = { ...cell, value: null };
    },
    removeTable: (name) => {
      tables.splice(tables.indexOf(find(name)), 1);
    },
  };
}

const letters = (column: number): string =>
  (column >= 26 ? letters(Math.floor(column / 26) - 1) : "") +
  String.fromCharCode(65 + (column % 26));
