import type { Lineup } from "../lineup/lineup";
import { answersFor } from "./answersFor";
import { keepCells, shareCells } from "./cellsOf";
import type { CellValue, RecordKind, Row } from "./kind";

const NONE: ReadonlyMap<string, number> = new Map();

/**
 * Computes every limit, computed and result column of a table from its keys and entries, column by
 * column, so that a column may look at the whole of those before it. The rows given stay as they are.
 */
export function evaluate(kind: RecordKind, rows: readonly Row[], lineup: Lineup): Row[] {
  const computed: Record<string, CellValue>[] = rows.map((row) => ({ ...row }));
  for (const { id, value } of kind.columns) if (!value) shareCells(rows, computed, id);
  for (const { id, own, value, survey } of kind.columns) {
    if (!value) continue;
    const whole = survey?.(computed) ?? NONE;
    const cells = answersFor(
      computed,
      (row) => own?.(row, lineup)?.value ?? value(row, lineup, whole),
    );
    computed.forEach((row, at) => {
      row[id] = cells[at] ?? null;
    });
    keepCells(computed, id, cells);
  }
  return computed;
}
