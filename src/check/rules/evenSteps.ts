import { seldom } from "../among/chance";
import { type JudgedTable, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../findings/finding";
import { type Reckoning, reckoningOf, SELDOM } from "./sameRun";

/** Rows in order from which on even steps are worth reckoning. */
const LONG = 5;

/** Readings that go up or down from row to row by the very same step. */
export const evenSteps: Rule = {
  id: "even-steps",
  reads: "table",
  find: (table, { text }) => {
    const says = text.rules["even-steps"];
    const reckoning = reckoningOf(table);
    return reckoning.columns.flatMap(({ id, header }, column) =>
      runsIn(reckoning, column).flatMap((run): Finding[] => {
        const [row = 0] = run.rows;
        const expected = expectedOf(reckoning, column, run.rows);
        if (!isAcross(table, run.rows) || expected >= SELDOM) return [];
        return [
          {
            rule: "even-steps",
            weight: "query",
            ...where(table, row, id),
            message: says.message(
              rowName(table, row),
              header,
              run.rows.length,
              said(Math.abs(run.step)),
              seldom(expected),
            ),
            found: run.rows.length,
          },
        ];
      }),
    );
  },
};

interface Run {
  readonly rows: number[];
  readonly step: number;
}

/** Rows in order of which each reads as much more or less than the one before as that one did. */
function runsIn({ table, cells }: Reckoning, column: number): Run[] {
  const read = cells[column] ?? [];
  const runs: Run[] = [];
  for (let row = 1; row < read.length; row++) {
    const [before, now] = [read[row - 1], read[row]];
    if (typeof before !== "number" || typeof now !== "number" || table.aside.has(row)) continue;
    const step = now - before;
    const last = runs.at(-1);
    if (last?.rows.at(-1) === row - 1 && isSameStep(last.step, step, now)) last.rows.push(row);
    else if (step !== 0) runs.push({ rows: [row - 1, row], step });
  }
  return runs.filter(({ rows }) => rows.length >= LONG);
}

const isSameStep = (one: number, other: number, size: number): boolean =>
  Math.abs(one - other) <= 1e-9 * Math.abs(size);

/** How many such runs chance would make: each row from the third on would have to read one number and no other. */
const expectedOf = (
  { table, chance }: Reckoning,
  column: number,
  rows: readonly number[],
): number =>
  rows.slice(2).reduce((product, row) => product * chance(row, column), table.rows.length);

/** Points of one device go up evenly because they are set so. */
const isAcross = ({ rows }: JudgedTable, run: readonly number[]): boolean =>
  new Set(run.map((row) => rows[row]?.object)).size > 1;
