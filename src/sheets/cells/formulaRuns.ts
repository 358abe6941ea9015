import { memoizeFor } from "../../quantities/memoizeFor";
import type { TableSnapshot } from "../snapshot";

/** Rows of a column, from the first up to but not including the last, that hold the same formula, or none. */
export interface FormulaRun {
  readonly formula: string | undefined;
  readonly from: number;
  readonly to: number;
}

/** The formulas down a column of a table, as a rule one for all of its rows; gone through once for each column. */
export const formulaRuns = (table: TableSnapshot, column: number): readonly FormulaRun[] => {
  const known = runsIn(table);
  const before = known.get(column);
  if (before) return before;
  const runs = runsDown(table, column);
  known.set(column, runs);
  return runs;
};

const runsIn = memoizeFor((_table: TableSnapshot) => new Map<number, readonly FormulaRun[]>());

function runsDown({ rowCount, formula }: TableSnapshot, column: number): FormulaRun[] {
  const runs: FormulaRun[] = [];
  let from = 0;
  let above = rowCount > 0 ? formula(0, column) : undefined;
  for (let row = 1; row <= rowCount; row++) {
    const here = row < rowCount ? formula(row, column) : undefined;
    if (row < rowCount && here === above) continue;
    runs.push({ formula: above, from, to: row });
    [from, above] = [row, here];
  }
  return runs;
}

/** The rows of a column that hold a formula, or those that hold none. */
export const rowsByFormula = (
  table: TableSnapshot,
  column: number,
  hasFormula: boolean,
): readonly number[] =>
  formulaRuns(table, column).flatMap(({ formula, from, to }) =>
    (formula !== undefined) === hasFormula ? rowsFrom(from, to) : [],
  );

/** Rows from a first up to but not including a last. */
export function rowsFrom(from: number, to: number): number[] {
  const rows: number[] = [];
  for (let row = from; row < to; row++) rows.push(row);
  return rows;
}
