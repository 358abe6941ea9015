import { memoizeFor } from "../../quantities/memoizeFor";
import type { Row } from "../../records/kind";
import type { JudgedTable } from "../context";

/** A spread that a sheet states, and what it may rightly be. */
export interface Spread {
  /** How far the greatest is above the lowest, in the sheet's unit. */
  readonly wanted: number;
  /** That, and what else people call a spread or a deviation (common practice). */
  readonly right: readonly number[];
  readonly unit: string;
  /** The step that people round such a figure to (common practice). */
  readonly step: number;
}

/**
 * What the record of a row comes to for its group of poles: of resistances in per cent, as corrected or,
 * where they were not corrected, as read; of times in ms. Undefined below two poles.
 */
export const spreadOf = (table: JudgedTable, row: number): Spread | undefined => {
  const judged = table.judged[row] ?? {};
  const rule = table.kind.spread;
  if (rule === undefined) return undefined;
  const { unit, step } = rule;
  if (rule.from === undefined) {
    const own = judged[rule.column];
    return typeof own === "number" ? { wanted: own, right: [own], unit, step } : undefined;
  }
  const group = groupsOf(table).get(groupName(judged)) ?? [];
  const [first, ...others] = rule.from.flatMap((id) => {
    const poles = numbersOf(group, id);
    return poles.length < 2 ? [] : [percentages(poles, judged[id])];
  });
  return first && { wanted: first[0] ?? 0, right: [first, ...others].flat(), unit, step };
};

const groupName = ({ object, part }: Row) => `${object}\u0000${part}`;

/** The rows of each device. */
const groupsOf = memoizeFor(({ judged }: JudgedTable) => {
  const groups = new Map<string, Row[]>();
  for (const row of judged) {
    const group = groups.get(groupName(row)) ?? [];
    groups.set(groupName(row), group);
    group.push(row);
  }
  return groups;
});

const numbersOf = (rows: readonly Row[], id: string): number[] =>
  rows.flatMap((row) => {
    const value = row[id];
    return typeof value === "number" && value > 0 ? [value] : [];
  });

/** Greatest above lowest; range over mean and over greatest; greatest departure from the mean; and one pole's own. */
const percentages = (poles: readonly number[], own: unknown): number[] => {
  const [least, most] = [Math.min(...poles), Math.max(...poles)];
  const mean = poles.reduce((sum, pole) => sum + pole, 0) / poles.length;
  const one = typeof own === "number" ? own : most;
  return [
    most / least - 1,
    (most - least) / mean,
    (most - least) / most,
    Math.max(most - mean, mean - least) / mean,
    one / least - 1,
    Math.abs(one - mean) / mean,
  ].map((share) => share * 100);
};
