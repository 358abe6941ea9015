import type { Report } from "../../src/check/check";
import { evaluate } from "../../src/records/evaluate";
import type { CellValue, RecordKind } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import { cellAddress } from "../../src/sheets/cells/address";
import type { Plan } from "../../src/sheets/plan/plan";
import { reconcile } from "../../src/sheets/plan/reconcile";
import { asRecordTable } from "../../src/sheets/recordTable";
import type { Snapshot, TableSnapshot } from "../../src/sheets/snapshot";
import { check, recheck } from "./checkBook";

interface Cell {
  readonly value: CellValue;
  readonly formula?: string;
}

/** A table whose cells lie open, so that one fault can be put into a copy of it. */
export interface OpenTable extends TableSnapshot {
  readonly cells: readonly (readonly Cell[])[];
}

const open = (
  name: string,
  sheet: string,
  headers: readonly string[],
  cells: readonly (readonly Cell[])[],
  hidden?: ReadonlySet<number>,
): OpenTable => ({
  name,
  sheet,
  top: 3,
  left: 0,
  headers,
  cells,
  hidden,
  rowCount: cells.length,
  cell: (row, column) => cells[row]?.[column]?.value ?? null,
  formula: (row, column) => cells[row]?.[column]?.formula,
});

/** A clean workbook with its report, from which faulty copies are made that share every other table. */
export interface FaultBook {
  readonly plan: Plan;
  readonly tables: readonly OpenTable[];
  readonly snapshot: Snapshot;
  readonly report: Report;
  readonly today: number;
}

const snapshotOf = (plan: Plan, tables: readonly OpenTable[], hidden?: string): Snapshot => ({
  lineup: plan.lineup,
  sheets: tables.map((table) => ({
    name: table.sheet,
    tables: [table],
    ...(table.sheet === hidden ? { hidden: true } : {}),
  })),
});

export function faultBook(plan: Plan, today: number): FaultBook {
  const tables = reconcile(plan).create.map(({ planned, writes }) => {
    const cells: Cell[][] = planned.rows.map(() => planned.columns.map(() => ({ value: null })));
    for (const { row, column, value, formula } of writes)
      (cells[row] as Cell[])[column] = { value, formula };
    return open(
      planned.table,
      planned.sheet,
      planned.columns.map(({ header }) => header),
      cells,
    );
  });
  const snapshot = snapshotOf(plan, tables);
  const checked = check(snapshot, today);
  if (!checked.ok) throw new Error(checked.reason);
  return { plan, tables, snapshot, report: checked.report, today };
}

export const tableOf = (book: FaultBook, name: string): OpenTable | undefined =>
  book.tables.find((table) => table.name === name);

export const kindOf = ({ name }: TableSnapshot): RecordKind | undefined =>
  KINDS.find(({ table }) => table === name);

/** The table with some cells set; a cell set without a formula loses the one it had. */
export const withCells = (
  table: OpenTable,
  changes: readonly { row: number; header: string; value: CellValue; formula?: string }[],
): OpenTable => {
  const cells = [...table.cells];
  for (const { row, header, value, formula } of changes) {
    const line = [...(cells[row] ?? [])];
    line[table.headers.indexOf(header)] = { value, formula };
    cells[row] = line;
  }
  return open(table.name, table.sheet, table.headers, cells, table.hidden);
};

export const withRows = (table: OpenTable, cells: OpenTable["cells"]): OpenTable =>
  open(table.name, table.sheet, table.headers, cells);

export const withHeaders = (table: OpenTable, headers: readonly string[]): OpenTable =>
  open(table.name, table.sheet, headers, table.cells);

export const withHidden = (table: OpenTable, rows: readonly number[]): OpenTable =>
  open(table.name, table.sheet, table.headers, table.cells, new Set(rows));

/** What a spreadsheet does after an edit: every formula of ours that stands is worked out again. */
export function recalculated(book: FaultBook, table: OpenTable): OpenTable {
  const kind = kindOf(table);
  if (!kind) return table;
  const { at, rows } = asRecordTable(kind, table);
  const judged = evaluate(kind, rows, book.plan.lineup);
  const computed = kind.columns.filter(({ value, id }) => value && at.has(id));
  const cells = table.cells.map((line, row) => {
    const fresh = [...line];
    for (const { id } of computed) {
      const column = at.get(id) ?? 0;
      const formula = line[column]?.formula;
      if (formula !== undefined) fresh[column] = { value: judged[row]?.[id] ?? null, formula };
    }
    return fresh;
  });
  return open(table.name, table.sheet, table.headers, cells, table.hidden);
}

/** The report of the workbook with one table in another's place, taken out, or its sheet hidden. */
export function reportWith(
  book: FaultBook,
  name: string,
  table: OpenTable | undefined,
  hidden?: string,
  also?: OpenTable,
): Report {
  const tables = book.tables.flatMap((one) =>
    one.name === name ? (table ? [table] : []) : [one.name === also?.name ? also : one],
  );
  const checked = recheck(book.report, snapshotOf(book.plan, tables, hidden));
  if (!checked.ok) throw new Error(checked.reason);
  return checked.report;
}

export const addressOf = (table: OpenTable, row: number, header: string): string =>
  cellAddress(table, row, table.headers.indexOf(header));
