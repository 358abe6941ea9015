import { openBook } from "../intake/openBook";
import type { Filled } from "../intake/place/filled";
import { keyIds, rowKey } from "../records/kind";
import type { RecordTable } from "../sheets/recordTable";
import type { TableSnapshot } from "../sheets/snapshot";
import { asInput } from "./read/cellValues";
import { inWords } from "./read/errorWords";
import { readExcel } from "./read/readSheets";
import type { Watched } from "./write/chunks";
import { type LayoutAim, layoutRuns, nameAsTold } from "./write/layoutRuns";
import { nameIn, type TableAim, tableRuns } from "./write/tableRuns";
import { type Hits, writeAims } from "./write/writeAims";

type Placed = Filled["written"][number];

export interface FillOptions extends Watched {
  /**
   * True where the cells were read in the batch before this call: they are then not read again first,
   * and a small fill takes a single batch.
   */
  readonly fresh?: boolean;
}

/** A reading on its way: as it was placed, and where its record stands now. */
interface Pending {
  readonly cell: Placed;
  readonly table: RecordTable;
  readonly row: number;
}

/** So often a record that has moved is looked for again. */
const ROUNDS = 4;

/**
 * Writes placed readings into their cells; Excel recalculates what depends on them. A cell is written
 * only while it holds what it held when the reading was placed, and its header, or its titles, and the
 * names of its record are the same. Where another row or column has come into its place, the workbook is
 * read again and the record found by its names. What slips in between the last look and the writing is
 * found by what the writing itself reads first, and put back.
 *
 * @throws {BookError} where a cell to be written is on a protected sheet and locked: nothing is changed
 * then; or with what stopped the work: cells not yet written are as they were
 * @throws {NotPutBack} where what was typed meanwhile could not be put back
 */
export const applyFills = (
  context: Excel.RequestContext,
  cells: readonly Placed[],
  options: FillOptions = {},
): Promise<Filled> =>
  inWords(
    (work) => work.fill,
    async () => {
      const done = { written: [] as Placed[], same: [] as Placed[], heldBack: [] as Placed[] };
      let pending = cells.map((cell): Pending => ({ cell, table: cell.table, row: cell.row }));
      for (let round = 0; pending.length > 0 && round < ROUNDS; round++) {
        const { there, lost } = round === 0 ? here(pending) : await foundAgain(context, pending);
        done.heldBack.push(...lost);
        const fresh = round === 0 && options.fresh === true;
        const hits = await written(context, there, { ...options, fresh });
        done.written.push(...cellsOf(hits.written));
        // Of one that was looked for again, a batch that failed may have written it.
        (round === 0 ? done.same : done.written).push(...cellsOf(hits.same));
        done.heldBack.push(...cellsOf(hits.changed));
        pending = hits.moved.map(({ pending }) => pending);
      }
      done.heldBack.push(...pending.map(({ cell }) => cell));
      return done;
    },
  );

type Of = { readonly pending: Pending };
const cellsOf = (aims: readonly Of[]): Placed[] => aims.map(({ pending: { cell } }) => cell);
const here = (there: readonly Pending[]) => ({ there, lost: [] as Placed[] });

async function written(
  context: Excel.RequestContext,
  pending: readonly Pending[],
  options: FillOptions,
): Promise<Hits<Of & (TableAim | LayoutAim)>> {
  const own = pending.filter(({ table }) => table.table.ownLayout === undefined);
  const keys = keysIn(own);
  const tables = tableRuns(own.flatMap(tableAim), (table) => keys.get(table) ?? []);
  const layouts = layoutRuns(pending.flatMap(layoutAim));
  const homeless = pending.filter(
    (one) => one.table.table.ownLayout && layoutAim(one).length === 0,
  );
  const hits = await writeAims<Of & (TableAim | LayoutAim)>(
    context,
    [...tables, ...layouts],
    options,
  );
  hits.changed.push(...homeless.map((one) => ({ pending: one }) as Of & LayoutAim));
  return hits;
}

const keysIn = (pending: readonly Pending[]): ReadonlyMap<TableSnapshot, number[]> =>
  new Map(pending.map(({ table }) => [table.table, keyColumns(table)]));

const keyColumns = ({ kind, at }: RecordTable): number[] =>
  keyIds(kind).flatMap((id) => at.get(id) ?? []);

/** The formula that a reading's cell held when the reading was placed, wherever its record stands by now. */
function formulaPlaced({ table: { table, at }, row, column }: Placed): { formula?: string } {
  const formula = table.formula(row, at.get(column) ?? -1);
  return formula === undefined ? {} : { formula };
}

/** The cell of a record table that a reading goes into; none where the table has no such column. */
function tableAim(pending: Pending): (Of & TableAim)[] {
  const { cell, table: record, row } = pending;
  const { table } = record;
  const column = record.at.get(cell.column);
  if (column === undefined) return [];
  const keys = keyColumns(record).map((key) => table.cell(row, key));
  return [
    {
      ...{ pending, table, row, column },
      name: nameIn(table, { column, width: 1 }, keys),
      old: [{ value: cell.old, ...formulaPlaced(cell) }],
      wanted: [cell.value],
      input: [asInput(cell.value)],
    },
  ];
}

/** The cell of a layout that a reading goes into, each as the layout has it; none where it has no such cell. */
function layoutAim(pending: Pending): (Of & LayoutAim)[] {
  const { cell, table: record, row } = pending;
  const { ownLayout, sheet } = record.table;
  const column = record.at.get(cell.column);
  const found = column === undefined ? undefined : ownLayout?.holds(row, column);
  if (!ownLayout || !found || column === undefined) return [];
  const told = ownLayout.toldBy?.(row) ?? [];
  const wanted = ownLayout.written(row, column, cell.value);
  const placed = cell.table.at.get(cell.column) ?? -1;
  const stood = cell.table.table.ownLayout?.holds(cell.row, placed)?.value ?? null;
  return [
    {
      ...{ pending, sheet, row: found.row, column: found.column, told },
      name: nameAsTold(told),
      old: [{ value: stood, ...formulaPlaced(cell) }],
      wanted: [wanted],
      input: [asInput(wanted)],
    },
  ];
}

/** The records in the workbook as it is now: each by its names, where one row alone has them. */
async function foundAgain(context: Excel.RequestContext, pending: readonly Pending[]) {
  const { tables } = openBook(await readExcel(context));
  const there: Pending[] = [];
  const lost: Placed[] = [];
  for (const { cell } of pending) {
    const table = tables.find((one) => isSameTable(one, cell.table));
    const row = table && rowOf(table, cell);
    if (!table || row === undefined) lost.push(cell);
    else there.push({ cell, table, row });
  }
  return { there, lost };
}

const isSameTable = (one: RecordTable, other: RecordTable): boolean =>
  one.kind.id === other.kind.id && one.table.name === other.table.name;

function rowOf({ kind, rows }: RecordTable, { table, row }: Placed): number | undefined {
  const ids = keyIds(kind);
  const key = rowKey(table.rows[row] ?? {}, ids);
  const found = rows.flatMap((one, at) => (rowKey(one, ids) === key ? [at] : []));
  return found.includes(row) ? row : found.length === 1 ? found[0] : undefined;
}
