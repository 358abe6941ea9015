import type { Filled } from "../intake/place/filled";
import { isSameStored } from "../sheets/cell";
import { asBefore, asCell, asInput } from "./cellValues";
import { OBJECT_BYTES, packed, type Watched } from "./chunks";

type Placed = Filled["written"][number];

/** A cell of a layout that is to be filled, with what it held when it was read and what it is to hold. */
interface Target {
  readonly cell: Placed;
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly held: Placed["value"];
  readonly wanted: Placed["value"];
  readonly bytes: number;
}

/**
 * Writes placed readings into cells of somebody's own layout, each as the layout has it. A cell is
 * written only while it holds what it held when it was read; what slips in between is put back. A value
 * that the layout has no cell for is held back.
 */
export async function fillOwnLayout(
  context: Excel.RequestContext,
  cells: readonly Placed[],
  { signal, most }: Watched,
): Promise<Filled> {
  const targets = cells.map((cell) => ({ cell, target: targetOf(cell) }));
  const written: Placed[] = [];
  const same: Placed[] = [];
  const heldBack = targets.flatMap(({ cell, target }) => (target ? [] : [cell]));
  for (const batch of packed(
    targets.flatMap(({ target }) => (target ? [target] : [])),
    most,
  )) {
    signal?.throwIfAborted();
    const looked = batch.map((target) => ({ target, range: load(context, target) }));
    await context.sync();
    const ready: Target[] = [];
    for (const { target, range } of looked) {
      const now = asCell(range.values[0]?.[0]);
      if (isSameStored(now, target.wanted)) same.push(target.cell);
      else if (isSameStored(now, target.held)) ready.push(target);
      else heldBack.push(target.cell);
    }
    const filled = ready.map((target) => {
      const range = load(context, target);
      range.load("formulas");
      range.values = [[asInput(target.wanted)]];
      return { target, range };
    });
    await context.sync();
    for (const { target, range } of filled) {
      const before = range.values[0]?.[0];
      if (isSameStored(asCell(before), target.held)) written.push(target.cell);
      else {
        heldBack.push(target.cell);
        cellOf(context, target).formulas = [[asBefore(range.formulas[0]?.[0], before)]];
      }
    }
    await context.sync();
  }
  return { written, same, heldBack };
}

function targetOf(cell: Placed): Target | undefined {
  const { table, at } = cell.table;
  const column = at.get(cell.column);
  const found = column === undefined ? undefined : table.ownLayout?.holds(cell.row, column);
  return (
    found && {
      cell,
      sheet: table.sheet,
      row: found.row,
      column: found.column,
      held: found.value,
      wanted: table.ownLayout?.written(cell.row, column ?? 0, cell.value) ?? null,
      bytes: 4 * OBJECT_BYTES,
    }
  );
}

const cellOf = (context: Excel.RequestContext, { sheet, row, column }: Target): Excel.Range =>
  context.workbook.worksheets.getItem(sheet).getCell(row, column).untrack();

function load(context: Excel.RequestContext, target: Target): Excel.Range {
  const range = cellOf(context, target);
  range.load("values");
  return range;
}
