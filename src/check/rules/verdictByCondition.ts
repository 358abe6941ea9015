import type { Lineup } from "../../lineup/lineup";
import { memoizeFor } from "../../quantities/memoizeFor";
import { evaluate } from "../../records/evaluate";
import { verdictOf } from "../../records/kind";
import { type Departure, departures } from "../conditions";
import { inUnit, type JudgedTable, type Rule, rowName, said, where } from "../context";

interface Hanging extends Departure {
  /** What the row comes to with the condition of its day. */
  readonly verdict: string;
}

/** A row that passes with the condition typed for it and would not with that of the other rows of its day and instrument. */
export const verdictByCondition: Rule = {
  id: "verdict-by-condition",
  reads: "table",
  find: (table, { lineup, text }) =>
    hangingOn(table, lineup).map(({ row, column, value, middle, count, verdict }) => ({
      rule: "verdict-by-condition",
      weight: "stop",
      ...where(table, row, column.id),
      message: text.rules["verdict-by-condition"].message(
        rowName(table, row),
        column.header,
        inUnit(value, column.unit),
        inUnit(middle, column.unit),
        count - 1,
        verdict,
      ),
      found: said(value),
      expected: said(middle),
    })),
};

const known = memoizeFor((_table: JudgedTable) => new Map<Lineup, readonly Hanging[]>());

/** The rows of a table whose pass hangs on a condition that departs from its day. */
export const hangingOn = (table: JudgedTable, lineup: Lineup): readonly Hanging[] => {
  const before = known(table).get(lineup);
  if (before) return before;
  const hanging = findHanging(table, lineup);
  known(table).set(lineup, hanging);
  return hanging;
};

function findHanging(table: JudgedTable, lineup: Lineup): Hanging[] {
  const passing = departures(table).filter(
    ({ row }) => verdictOf(table.judged[row] ?? {}) === "Pass",
  );
  if (passing.length === 0) return [];
  const rows = [...table.rows];
  for (const { row, column, middle } of passing) rows[row] = { ...rows[row], [column.id]: middle };
  const again = evaluate(table.kind, rows, lineup);
  const told = new Set<number>();
  return passing.flatMap((departure): Hanging[] => {
    const verdict = verdictOf(again[departure.row] ?? {});
    if (verdict === "Pass" || told.has(departure.row)) return [];
    told.add(departure.row);
    return [{ ...departure, verdict }];
  });
}
