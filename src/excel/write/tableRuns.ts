import type { CellValue } from "../../records/kind";
import type { TableSnapshot } from "../../sheets/snapshot";
import { asCell } from "../read/cellValues";
import type { Aim, Held, Run } from "./aim";
import { OBJECT_BYTES, sentBytes } from "./chunks";

/** Cells of one row of a table's body, from a column on. */
export interface TableAim extends Aim {
  readonly table: TableSnapshot;
  /** From 0 within the body. */
  readonly row: number;
  readonly column: number;
}

/** Positions of the columns that name a table's rows. */
export type KeysOf = (table: TableSnapshot) => readonly number[];

/** What a cell of a table held when it was read. */
export const heldBy = (table: TableSnapshot, row: number, column: number): Held => {
  const formula = table.formula(row, column);
  return { value: table.cell(row, column), ...(formula === undefined ? {} : { formula }) };
};

/** What tells of cells of a table: the headers of their columns and the keys of their row. */
export const nameIn = (
  { headers }: TableSnapshot,
  { column, width }: { readonly column: number; readonly width: number },
  keys: readonly CellValue[],
): string => named(headers.slice(column, column + width), keys);

const named = (headers: readonly unknown[], keys: readonly unknown[]): string =>
  JSON.stringify([headers.map((header) => String(header ?? "")), keys.map(asCell)]);

/** The longest a run may be, so that no single one comes near what a batch may hold. */
const RUN_ROWS = 2_000;

/** Aims at tables put together where they lie below each other in the same columns. */
export function tableRuns<A extends TableAim>(aims: readonly A[], keysOf: KeysOf): Run<A>[] {
  const order = new Map([...new Set(aims.map(({ table }) => table))].map((one, at) => [one, at]));
  const groups: A[][] = [];
  for (const aim of [...aims].sort(
    (one, other) =>
      (order.get(one.table) ?? 0) - (order.get(other.table) ?? 0) ||
      one.column - other.column ||
      one.row - other.row,
  )) {
    const group = groups.at(-1);
    const last = group?.at(-1);
    const goesOn =
      last?.table === aim.table &&
      last.column === aim.column &&
      last.input.length === aim.input.length &&
      last.row + 1 === aim.row;
    if (group && goesOn && group.length < RUN_ROWS) group.push(aim);
    else groups.push([aim]);
  }
  return groups.map((group) => runOf(group, keysOf));
}

function runOf<A extends TableAim>(aims: readonly A[], keysOf: KeysOf): Run<A> {
  const { table, row, column, input } = aims[0] as A;
  const keys = keysOf(table);
  const [from, to] = [Math.min(...keys), Math.max(...keys)];
  return {
    aims,
    sheet: table.sheet,
    table: table.name,
    bytes: 12 * OBJECT_BYTES + aims.reduce((sum, aim) => sum + bytesOf(aim), 0),
    ranges: ({ workbook }) => {
      const item = workbook.tables.getItem(table.name);
      const body = item.getDataBodyRange().untrack();
      const [down, across] = [aims.length - 1, input.length - 1];
      const block = (
        of: Excel.Range,
        [at, left]: [number, number],
        rows: number,
        columns: number,
      ) => of.getCell(at, left).untrack().getResizedRange(rows, columns);
      const head = block(item.getHeaderRowRange().untrack(), [0, column], 0, across);
      return {
        target: block(body, [row, column], down, across),
        named: keys.length > 0 ? [head, block(body, [row, from], down, to - from)] : [head],
      };
    },
    nameOf: (index, [head = [], cells = []]) =>
      named(
        head[0] ?? [],
        keys.map((key) => cells[index]?.[key - from]),
      ),
  };
}

/** What is sent for a row, and what comes back: what it held, thrice, with its keys. */
const bytesOf = ({ name, old, input }: Aim): number =>
  100 + 2 * sentBytes(name) + sentBytes(input) + 3 * sentBytes(old);
