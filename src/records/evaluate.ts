import type { Lineup } from "../lineup/lineup";
import { answersFor } from "./answersFor";
import type { RecordKind, Row } from "./kind";
import { rowsAnew } from "./rowsOfCells";

const NONE: ReadonlyMap<string, number> = new Map();

/**
 * Computes every limit, computed and result column of a table from its keys and entries, column by
 * column, so that a column may look at the whole of those before it. The rows given stay as they are.
 */
export function evaluate(kind: RecordKind, rows: readonly Row[], lineup: Lineup): readonly Row[] {
  const { rows: computed, put } = rowsAnew(rows);
  for (const { id, own, value, survey } of kind.columns) {
    if (!value) continue;
    const whole = survey?.(computed) ?? NONE;
    const cells = answersFor(
      computed,
      (row) => own?.(row, lineup)?.value ?? value(row, lineup, whole),
    );
    put(id, cells);
  }
  return computed;
}
