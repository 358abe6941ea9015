import type { Lineup } from "../lineup/lineup";
import { answersFor } from "./answersFor";
import { cellsOf, haveCells, keepCells, shareCells } from "./cellsOf";
import type { CellValue, RecordKind, Row } from "./kind";

const NONE: ReadonlyMap<string, number> = new Map();

/**
 * Computes every limit, computed and result column of a table from its keys and entries, column by
 * column, so that a column may look at the whole of those before it. The rows given stay as they are; a
 * row of which all is as it was given is the very same one.
 */
export function evaluate(kind: RecordKind, rows: readonly Row[], lineup: Lineup): Row[] {
  const computed = [...rows];
  for (const { id, value } of kind.columns) if (!value) shareCells(rows, computed, id);
  for (const { id, own, value, survey } of kind.columns) {
    if (!value) continue;
    const whole = survey?.(computed) ?? NONE;
    const cells = answersFor(
      computed,
      (row) => own?.(row, lineup)?.value ?? value(row, lineup, whole),
    );
    keepCells(computed, id, setCells(computed, rows, id, cells));
  }
  return computed;
}

/**
 * Puts the cells of a column into rows, of which those that are still given are copied before they change.
 * Gives the cells: those of the rows that were given, where they are the same.
 */
function setCells(
  computed: Row[],
  given: readonly Row[],
  id: string,
  cells: readonly CellValue[],
): readonly CellValue[] {
  const stored = cellsOf(given, id);
  // As a rule a column comes to what is stored, and no row has to be looked into.
  if (haveCells(given, id) && stored.every((cell, at) => cell === cells[at])) return stored;
  let isSame = true;
  for (let at = 0; at < cells.length; at++) {
    const [row = {}, cell = null] = [computed[at], cells[at]];
    const isGiven = row === given[at];
    // What is not there at all is blank from now on.
    if ((isGiven ? stored[at] : row[id]) === cell && (cell !== null || id in row)) continue;
    isSame = false;
    if (isGiven) computed[at] = { ...row, [id]: cell };
    else (row as Record<string, CellValue>)[id] = cell;
  }
  return isSame ? stored : cells;
}
