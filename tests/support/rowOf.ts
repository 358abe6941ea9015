import type { Lineup } from "../../src/lineup/lineup";
import { evaluate } from "../../src/records/evaluate";
import type { RecordKind, Row } from "../../src/records/kind";

/** The first row that a lineup needs of a kind, or the one of this part, with entries in it, computed. */
export function rowOf(kind: RecordKind, lineup: Lineup, entries: Row, part?: string): Row {
  const planned = kind.rows(lineup).find((row) => part === undefined || row.part === part);
  if (!planned) throw new Error(`no row ${part ?? ""} of ${kind.id}`);
  return evaluate(kind, [{ ...planned, ...entries }], lineup)[0] as Row;
}

/** What a computed column says of how its value came about. */
export const workingOf = (kind: RecordKind, id: string, row: Row, lineup: Lineup): string =>
  kind.columns.find((column) => column.id === id)?.working?.(row, lineup) ?? "";
