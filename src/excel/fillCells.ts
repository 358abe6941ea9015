import type { Filled } from "../intake/place/filled";
import type { CellValue } from "../records/kind";
import { BookError } from "../sheets/bookError";
import { isSameStored } from "../sheets/cell";
import type { RecordTable } from "../sheets/recordTable";
import { asBefore, asCell, asInput } from "./cellValues";
import { OBJECT_BYTES, packed, sentBytes, type Watched } from "./chunks";
import { inWords } from "./errorWords";
import { fillOwnLayout } from "./fillOwnLayout";

type Placed = Filled["written"][number];

export interface FillOptions extends Watched {
  /**
   * True where the cells were read in the batch before this call: they are then not read again first,
   * and a small fill takes a single batch.
   */
  readonly fresh?: boolean;
}

/** Cells below each other in one column of one table. */
interface Run {
  readonly table: RecordTable;
  readonly row: number;
  readonly column: number;
  readonly cells: readonly Placed[];
}

/** What a run was found to hold. */
interface Found {
  readonly keys: Excel.Range;
  readonly target: Excel.Range;
}

/**
 * Writes placed readings into their cells; Excel recalculates what depends on them. A cell is written
 * only while it holds what it held when the reading was placed, and its row has the same key cells. A
 * change that slips in between the last look and the writing is found by what the writing itself reads
 * first, and put back.
 *
 * @throws {BookError} where a cell to be written is on a protected sheet and locked: nothing is changed
 * then; or with what stopped the work: cells not yet written are as they were
 */
export const applyFills = (
  context: Excel.RequestContext,
  cells: readonly Placed[],
  options: FillOptions = {},
): Promise<Filled> =>
  inWords("Writing the readings", async () => {
    const isInOwnLayout = ({ table }: Placed) => table.table.ownLayout !== undefined;
    const own = cells.filter((cell) => !isInOwnLayout(cell));
    const first = options.fresh
      ? { ready: own, same: [], heldBack: [] }
      : await lookedAt(context, own, options);
    const { written, heldBack } = await writtenTo(context, first.ready, options);
    const inLayouts = await fillOwnLayout(context, cells.filter(isInOwnLayout), options);
    return {
      written: [...written, ...inLayouts.written],
      same: [...first.same, ...inLayouts.same],
      heldBack: [...first.heldBack, ...heldBack, ...inLayouts.heldBack],
    };
  });

/** Reads the cells again and parts those that may be written from those that may not. */
async function lookedAt(
  context: Excel.RequestContext,
  cells: readonly Placed[],
  { signal, most }: Watched,
): Promise<{ ready: Placed[]; same: Placed[]; heldBack: Placed[] }> {
  const ready: Placed[] = [];
  const same: Placed[] = [];
  const heldBack: Placed[] = [];
  for (const batch of packed(runsOf(cells), most)) {
    signal?.throwIfAborted();
    const asked = batch.map((run) => {
      const found = ask(context, run);
      const { protection } = tableOf(context, run).worksheet;
      protection.load("protected");
      found.target.load("format/protection/locked");
      return { run, found, protection };
    });
    await context.sync();
    const shut = asked.find(
      ({ found, protection }) =>
        protection.protected && found.target.format.protection.locked !== false,
    );
    if (shut)
      throw new BookError(
        `The sheet "${shut.run.table.table.sheet}" is protected and the cells to be filled are locked; take the protection off (Review, Unprotect Sheet) and place the readings again. Nothing was changed.`,
      );
    for (const { run, found } of asked)
      run.cells.forEach((cell, index) => {
        const now = asCell(found.target.values[index]?.[0]);
        const list = !sameRow(run, index, found)
          ? heldBack
          : isSameStored(now, cell.value)
            ? same
            : isSameStored(now, cell.old)
              ? ready
              : heldBack;
        list.push(cell);
      });
  }
  return { ready, same, heldBack };
}

/** Writes the cells, each batch reading first what it is about to write over. */
async function writtenTo(
  context: Excel.RequestContext,
  cells: readonly Placed[],
  { progress, signal, most }: Watched,
): Promise<{ written: Placed[]; heldBack: Placed[] }> {
  const written: Placed[] = [];
  const heldBack: Placed[] = [];
  let done = 0;
  for (const batch of packed(runsOf(cells), most)) {
    signal?.throwIfAborted();
    const asked = batch.map((run) => {
      const found = ask(context, run);
      found.target.load("formulas");
      found.target.values = run.cells.map(({ value }) => [asInput(value)]);
      return { run, found };
    });
    await context.sync();
    let back = false;
    for (const { run, found } of asked)
      run.cells.forEach((cell, index) => {
        const before = found.target.values[index]?.[0];
        if (sameRow(run, index, found) && isSameStored(asCell(before), cell.old))
          written.push(cell);
        else {
          heldBack.push(cell);
          back = true;
          const formula = found.target.formulas[index]?.[0];
          const body = tableOf(context, run).getDataBodyRange().untrack();
          body.getCell(run.row + index, run.column).untrack().formulas = [
            [asBefore(formula, before)],
          ];
        }
      });
    if (back) await context.sync();
    done += batch.reduce((sum, { cells }) => sum + cells.length, 0);
    progress?.(done, cells.length);
  }
  return { written, heldBack };
}

const tableOf = (context: Excel.RequestContext, { table }: Run): Excel.Table =>
  context.workbook.tables.getItem(table.table.name);

const keyColumns = ({ kind, at }: RecordTable): { id: string; column: number }[] =>
  kind.columns.flatMap(({ id, role }) => {
    const column = at.get(id);
    return role === "key" && column !== undefined ? [{ id, column }] : [];
  });

function ask(context: Excel.RequestContext, run: Run): Found {
  const body = tableOf(context, run).getDataBodyRange().untrack();
  const [first, last] = keySpan(run.table);
  const height = run.cells.length - 1;
  const block = (column: number, columns: number) =>
    body.getCell(run.row, column).untrack().getResizedRange(height, columns).untrack();
  const keys = block(first, last - first);
  const target = block(run.column, 0);
  keys.load("values");
  target.load("values");
  return { keys, target };
}

function keySpan(table: RecordTable): [first: number, last: number] {
  const columns = keyColumns(table).map(({ column }) => column);
  return [Math.min(...columns), Math.max(...columns)];
}

function sameRow({ table, row }: Run, index: number, { keys }: Found): boolean {
  const [first] = keySpan(table);
  const known = table.rows[row + index];
  return keyColumns(table).every(({ id, column }) =>
    isSameStored(asCell(keys.values[index]?.[column - first]), known?.[id] ?? null),
  );
}

/** The longest a run may be, so that no single one comes near what a batch may hold. */
const RUN_ROWS = 2_000;

function runsOf(cells: readonly Placed[]): (Run & { bytes: number })[] {
  const at = ({ table, column }: Placed) => table.at.get(column) ?? -1;
  const runs: { table: RecordTable; row: number; column: number; cells: Placed[] }[] = [];
  const order = new Map([...new Set(cells.map(({ table }) => table))].map((one, i) => [one, i]));
  for (const cell of [...cells].sort(
    (one, other) =>
      (order.get(one.table) ?? 0) - (order.get(other.table) ?? 0) ||
      at(one) - at(other) ||
      one.row - other.row,
  )) {
    const column = at(cell);
    if (column < 0) continue;
    const last = runs.at(-1);
    if (
      last?.table === cell.table &&
      last.column === column &&
      last.row + last.cells.length === cell.row &&
      last.cells.length < RUN_ROWS
    )
      last.cells.push(cell);
    else runs.push({ table: cell.table, row: cell.row, column, cells: [cell] });
  }
  return runs.map((run) => ({
    ...run,
    bytes:
      6 * OBJECT_BYTES +
      // What is sent, and three times as much for what comes back with the key cells.
      run.cells.reduce(
        (sum, { value, old }) =>
          sum + 100 + sentBytes(value as CellValue) + 2 * sentBytes(old as CellValue),
        0,
      ),
  }));
}
