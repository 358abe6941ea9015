import { a1 } from "../../sheets/cells/address";
import { isSameStored } from "../../sheets/cells/cell";
import type { Reconciled, TableChange } from "../../sheets/plan/reconcile";
import { type Snapshot, type TableSnapshot, tablesOf } from "../../sheets/snapshot";
import { asCell, asFormula, asInput } from "../read/cellValues";
import { OBJECT_BYTES, packed } from "../write/chunks";
import { type LostValue, NotPutBack } from "../write/putBack";
import { deleteSheet } from "./deleteSheet";

/** Cells to be taken away, which are read in the same batch first. */
interface Taken {
  readonly bytes: number;
  readonly table: TableSnapshot;
  /** First of its rows that goes, from 0. */
  readonly from: number;
  readonly cells: Excel.Range;
  readonly takeAway: () => void;
  /** Puts cells there again. */
  readonly putBack: ((input: unknown[][]) => void) | undefined;
}

/** Milliseconds before each try to put back what was typed meanwhile. */
const PAUSES = [0, 100, 400, 1500] as const;

/**
 * Takes away the rows and the sheets that a build added. What is taken away is read in the same batch: rows
 * that somebody typed into, or sorted, since they were looked at come back at the foot of their table.
 *
 * @param after the workbook as it was read after the build
 * @returns the sheets whose rows came back
 * @throws {NotPutBack} naming cells and values that are gone: those of a sheet, and of rows that could not come back
 */
export async function takeAway(
  context: Excel.RequestContext,
  { create, change }: Reconciled,
  after: Snapshot,
  most?: number,
): Promise<string[]> {
  const known = new Map(tablesOf(after).map((table) => [table.name, table]));
  const tables = [
    ...change.flatMap((one) => rowsOf(context, one, known.get(one.table.name))),
    ...create.flatMap(({ planned }) => sheetOf(context, known.get(planned.table))),
  ];
  const lost: LostValue[] = [];
  const sheets: string[] = [];
  for (const batch of packed(tables, most)) {
    for (const { cells, takeAway } of batch) {
      cells.load("values,formulas");
      takeAway();
    }
    await context.sync();
    const other = batch.filter((one) => differing(one).length > 0);
    const back = other.filter(({ putBack }) => putBack);
    const isBack = await triedBack(context, back);
    sheets.push(...(isBack ? back.map(({ table }) => table.sheet) : []));
    lost.push(...other.filter(({ putBack }) => !(putBack && isBack)).flatMap(differing));
  }
  if (lost.length > 0) throw new NotPutBack(lost);
  return sheets;
}

function rowsOf(
  { workbook }: Excel.RequestContext,
  { table: before, added }: TableChange,
  table: TableSnapshot | undefined,
): Taken[] {
  if (!table || added === 0) return [];
  const item = workbook.tables.getItem(table.name);
  const cells = item
    .getDataBodyRange()
    .untrack()
    .getCell(before.rowCount, 0)
    .untrack()
    .getResizedRange(added - 1, table.headers.length - 1);
  return [
    {
      ...{ table, cells, from: before.rowCount },
      bytes: bytesOf(table, added),
      takeAway: () => cells.delete("Up"),
      putBack: (input) => item.rows.add(undefined, input as string[][]),
    },
  ];
}

function sheetOf({ workbook }: Excel.RequestContext, table: TableSnapshot | undefined): Taken[] {
  if (!table) return [];
  const sheet = workbook.worksheets.getItem(table.sheet);
  const cells = workbook.tables.getItem(table.name).getDataBodyRange();
  return [
    {
      ...{ table, cells, from: 0 },
      bytes: bytesOf(table, table.rowCount),
      takeAway: () => deleteSheet(sheet),
      putBack: undefined,
    },
  ];
}

/** About what reading cells takes, thirty bytes to a value and its formula. */
const bytesOf = ({ headers }: TableSnapshot, rows: number): number =>
  2 * OBJECT_BYTES + rows * headers.length * 60;

/** The values among cells that were taken away that nobody knew of. */
function differing({ table, from, cells }: Taken): LostValue[] {
  return cells.values.flatMap((row, at) =>
    row.flatMap((given, column): LostValue[] => {
      const value = asCell(given);
      const isFormula = asFormula(cells.formulas[at]?.[column], given) !== undefined;
      const stood = from + at < table.rowCount ? table.cell(from + at, column) : null;
      return isFormula || value === null || isSameStored(value, stood)
        ? []
        : [
            {
              sheet: table.sheet,
              address: a1(table.top + 1 + from + at, table.left + column),
              value,
            },
          ];
    }),
  );
}

/** What to give to cells so that they hold again what was read of them: a text that begins with = is none of the formulas. */
const inputOf = ({ values, formulas }: Excel.Range): unknown[][] =>
  values.map((row, at) =>
    row.map((value, column) =>
      asFormula(formulas[at]?.[column], value) === undefined
        ? asInput(asCell(value))
        : formulas[at]?.[column],
    ),
  );

/** Whether rows could be put back. */
async function triedBack(context: Excel.RequestContext, back: readonly Taken[]): Promise<boolean> {
  const found = back.map(({ cells, putBack }) => ({ input: inputOf(cells), putBack }));
  if (found.length === 0) return true;
  for (const pause of PAUSES) {
    if (pause > 0) await new Promise((passed) => setTimeout(passed, pause));
    try {
      for (const { input, putBack } of found) putBack?.(input);
      await context.sync();
      return true;
    } catch {
      // Tried again; in the end the cells are named with what they held.
    }
  }
  return false;
}
