import { toCol } from "@borgar/fx/xlsx";
import { headOf } from "../../look/head";
import { HEADER_ROW, lastRow } from "../../look/tableLayout";
import { a1 } from "../../sheets/cells/address";
import type { CellWrite } from "../../sheets/cells/cell";
import type { PlannedSheet } from "../../sheets/plan/plannedSheet";
import type { TableChange } from "../../sheets/plan/reconcile";
import { asInput } from "../read/cellValues";
import { enteredFormula } from "../read/storedFormula";
import { every } from "./applyLook";
import { OBJECT_BYTES, rowChunks, type Step, sentBytes } from "./chunks";
import { heldBy, nameIn, type TableAim } from "./tableRuns";

type Input = string | number | boolean | null;

/** The sheet itself with everything that stands in its cells, and its table. */
export function contentSteps(
  worksheets: Excel.WorksheetCollection,
  planned: PlannedSheet,
  writes: readonly CellWrite[],
  exists: boolean,
  most: number | undefined,
): Step[] {
  const { columns } = planned;
  const sheet = () => worksheets.getItem(planned.sheet);
  const rows = Math.max(planned.rows.length, 1);
  const end = lastRow(planned.rows.length);
  const head = headOf(planned).map(({ text, from }) => ({ text, from }));
  let at = HEADER_ROW + 1;
  return [
    {
      bytes: sentBytes([head, columns.map(({ header }) => header)]) + 7 * OBJECT_BYTES,
      queue: () => {
        const made = exists ? sheet() : worksheets.add(planned.sheet);
        head.forEach(({ text, from }, row) => {
          made.getRange(a1(row, from)).untrack().values = [[asInput(text)]];
        });
        made
          .getRange(`${a1(HEADER_ROW, 0)}:${a1(HEADER_ROW, columns.length - 1)}`)
          .untrack().values = [columns.map(({ header }) => asInput(header))];
      },
    },
    ...rowChunks(grid(writes, rows, columns.length), most).map((chunk): Step => {
      const area = `${a1(at, 0)}:${a1(at + chunk.length - 1, columns.length - 1)}`;
      at += chunk.length;
      return {
        bytes: sentBytes(chunk) + OBJECT_BYTES,
        queue: () => {
          sheet().getRange(area).untrack().values = chunk;
        },
      };
    }),
    {
      bytes: 2 * OBJECT_BYTES,
      queue: () => {
        // A range, not an address: an address without a sheet is taken to be on the active one.
        const area = sheet().getRange(`${a1(HEADER_ROW, 0)}:${a1(end, columns.length - 1)}`);
        const table = sheet().tables.add(area.untrack(), true);
        table.name = planned.table;
      },
    },
    ...runs(writes.filter(({ formula }) => formula !== undefined)).map(
      ({ row, column, count, input }): Step => ({
        bytes: sentBytes(input) + OBJECT_BYTES,
        queue: () => {
          const from = HEADER_ROW + 1 + row;
          const letters = toCol(column);
          sheet()
            .getRange(`${letters}${from + 1}:${letters}${from + count}`)
            .untrack().formulas = every(input as string);
        },
      }),
    ),
  ];
}

/** The values of new rows; null where nothing is to be written, or a formula comes later. */
function grid(writes: readonly CellWrite[], rows: number, width: number): Input[][] {
  const cells = Array.from({ length: rows }, (): Input[] => new Array(width).fill(null));
  for (const { row, column, value, formula } of writes)
    if (formula === undefined && value !== null) (cells[row] as Input[])[column] = asInput(value);
  return cells;
}

/** Cells below each other that are to hold the same. */
function runs(
  writes: readonly CellWrite[],
): { row: number; column: number; count: number; input: string | number | boolean }[] {
  const found: { row: number; column: number; count: number; input: string | number | boolean }[] =
    [];
  for (const { row, column, value, formula } of [...writes].sort(
    (one, other) => one.column - other.column || one.row - other.row,
  )) {
    const input = formula === undefined ? asInput(value) : enteredFormula(formula);
    const last = found.at(-1);
    if (last?.column === column && last.row + last.count === row && last.input === input)
      last.count += 1;
    else found.push({ row, column, count: 1, input });
  }
  return found;
}

/** Cells of ours in a table that hold something else than they should, and formulas of rows added at its foot. */
export function changeAims(
  { table, writes }: Pick<TableChange, "table" | "writes">,
  keys: readonly number[],
): TableAim[] {
  const added = new Map(
    writes
      .filter(({ row }) => row >= table.rowCount)
      .map(({ row, column, value }) => [`${row},${column}`, value]),
  );
  const keyOf = (row: number, column: number) =>
    row < table.rowCount ? table.cell(row, column) : (added.get(`${row},${column}`) ?? null);
  return writes.flatMap(({ row, column, value, formula }): TableAim[] => {
    const isNew = row >= table.rowCount;
    if (isNew && formula === undefined) return [];
    const held = isNew ? undefined : heldBy(table, row, column);
    const rowKeys = keys.map((key) => keyOf(row, key));
    return [
      {
        ...{ table, row, column },
        name: nameIn(table, { column, width: 1 }, rowKeys),
        // What a formula comes to may have changed since.
        old: [held?.formula === undefined ? held : { formula: held.formula }],
        wanted: [formula === undefined ? value : undefined],
        input: [formula === undefined ? asInput(value) : enteredFormula(formula)],
      },
    ];
  });
}

/**
 * Rows added at a table's foot, and cells written over, values alone: those of one row at once and the
 * upper rows first, so that no entry is ever half of one and half of another.
 */
export const entrySteps = (
  tableOf: () => Excel.Table,
  change: Omit<TableChange, "aside" | "renamed">,
  most: number | undefined,
): Step[] => {
  const { table, writes } = change;
  const width = table.headers.length;
  const over = new Map<number, Input[]>();
  for (const write of writes) {
    if (isNew(change, write)) continue;
    const cells = over.get(write.row) ?? new Array<Input>(width).fill(null);
    cells[write.column] = asInput(write.value);
    over.set(write.row, cells);
  }
  const rows = [...over].sort(([one], [other]) => one - other);
  return [
    ...blocks(rows).flatMap(({ from, cells }) => {
      let at = from;
      return rowChunks(cells, most).map((chunk): Step => {
        const row = at;
        at += chunk.length;
        return {
          bytes: sentBytes(chunk) + 2 * OBJECT_BYTES,
          queue: () => {
            bodyPart(tableOf(), row, 0, chunk.length, width).values = chunk;
          },
        };
      });
    }),
    ...addedSteps(tableOf, change, most),
  ];
};

/** Rows that follow each other put together. */
function blocks(rows: readonly [row: number, cells: Input[]][]) {
  const found: { from: number; cells: Input[][] }[] = [];
  for (const [row, cells] of rows) {
    const last = found.at(-1);
    if (last && last.from + last.cells.length === row) last.cells.push(cells);
    else found.push({ from: row, cells: [cells] });
  }
  return found;
}

const isNew = ({ table }: Pick<TableChange, "table">, { row }: CellWrite) => row >= table.rowCount;

const bodyPart = (
  table: Excel.Table,
  row: number,
  column: number,
  rows: number,
  columns: number,
): Excel.Range =>
  table
    .getDataBodyRange()
    .untrack()
    .getCell(row, column)
    .untrack()
    .getResizedRange(rows - 1, columns - 1)
    .untrack();

/** Rows added at a table's foot. */
export function addedSteps(
  tableOf: () => Excel.Table,
  change: Omit<TableChange, "aside" | "renamed">,
  most: number | undefined,
): Step[] {
  const { table, added, writes } = change;
  if (added === 0) return [];
  const cells = grid(
    writes
      .filter((write) => isNew(change, write))
      .map((write) => ({ ...write, row: write.row - table.rowCount })),
    added,
    table.headers.length,
  );
  return rowChunks(cells, most).map(
    (chunk): Step => ({
      bytes: sentBytes(chunk) + OBJECT_BYTES,
      queue: () => {
        // Null leaves a cell as it is: blank, or filled by a column's own formula.
        tableOf().rows.add(undefined, chunk as (string | number | boolean)[][]);
      },
    }),
  );
}
