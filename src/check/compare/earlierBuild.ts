import type { Lineup } from "../../lineup/lineup";
import { memoizeFor } from "../../quantities/memoizeFor";
import { type BuiltFormulas, builtFormulas, markOf } from "../../sheets/cells/builtFormulas";
import type { Context, JudgedTable } from "../context";

/** Whether the cell of a row and column, by id, holds the formula of an earlier build. */
export type IsEarlier = (row: number, column: string) => boolean;

const nowhere: IsEarlier = () => false;

/**
 * Knows the formulas of a table that a build wrote and that a build now would write otherwise: by the marks
 * that the workbook remembers. Where it remembers none, or all of them stand, there are none.
 */
export function earlierIn(
  table: JudgedTable,
  { snapshot: { formulas }, lineup }: Pick<Context, "snapshot" | "lineup">,
): IsEarlier {
  if (!formulas || table.table.ownLayout || isCurrent(formulas, lineup)) return nowhere;
  const now = builtFormulas(lineup);
  const { kind, at } = table;
  const { name, formula } = table.table;
  const isWritten = (column: string, written: string) => {
    const mark = markOf(kind, name, column, written);
    return formulas.has(mark) && !now.has(mark);
  };
  // As a rule a column holds one formula.
  const last = new Map<string, { readonly written: string; readonly isEarlier: boolean }>();
  return (row, column) => {
    const written = formula(row, at.get(column) ?? -1);
    if (written === undefined) return false;
    const before = last.get(column);
    if (before?.written === written) return before.isEarlier;
    const isEarlier = isWritten(column, written);
    last.set(column, { written, isEarlier });
    return isEarlier;
  };
}

/** Whether a workbook remembers formulas of which a build now would write some otherwise. */
export const isEarlierBuild = ({
  snapshot: { formulas },
  lineup,
}: Pick<Context, "snapshot" | "lineup">): boolean =>
  formulas !== undefined && !isCurrent(formulas, lineup);

/** Whether a workbook was built with the formulas of now. */
function isCurrent(formulas: BuiltFormulas, lineup: Lineup): boolean {
  const known = comparedWith(formulas);
  const before = known.get(lineup);
  if (before !== undefined) return before;
  const isSame = [...builtFormulas(lineup)].every((mark) => formulas.has(mark));
  known.set(lineup, isSame);
  return isSame;
}

const comparedWith = memoizeFor((_formulas: BuiltFormulas) => new WeakMap<Lineup, boolean>());
