import type { Column } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { type JudgedTable, type Rule, where } from "../context";
import type { Finding } from "../finding";
import { decimals, inOrder, measured } from "../similar";

/** Readings from which on digits are looked at. */
const ENOUGH = 60;
/** Chi-square of ten equally likely digits, exceeded by chance once in a million tables (9 degrees of freedom; computed). */
const SELDOM = 45;
/** Steps of the third digit that the middle half of the readings must span, so that digits have no reason to cluster. */
const SPAN = 30;

/** Third digits of many readings of which some stand far more often than others. */
export const digitPattern: Rule = {
  id: "digit-pattern",
  title: "Digits that repeat",
  finds:
    "a column of at least 60 readings whose third digits are far from evenly spread: chi-square above 45 for ten digits, which chance exceeds about once in a million",
  why: "Instruments know no favourite digit; people do, when they round, estimate or invent.",
  satisfies:
    "nothing, where the instrument shows no third digit; else the instrument's own record of its readings",
  quiet:
    "for fewer readings, fewer than three digits, and readings too close together for their digits to vary",
  reads: "table",
  find: (table) => measured(table).flatMap((column) => patternOf(table, column)),
};

function patternOf(table: JudgedTable, column: Column): Finding[] {
  if (column.accepts?.type !== "reading" || !column.unit) return [];
  const { unit } = column;
  const values = table.rows.flatMap((row, at) => {
    const value = table.aside.has(at) ? undefined : exactly(row[column.id], unit);
    return value !== undefined && value > 0 ? [{ at, value }] : [];
  });
  const sorted = inOrder(values.map(({ value }) => value));
  const places = values.reduce((most, { value }) => Math.max(most, decimals(value)), 0);
  const long = values.filter(({ value }) => value >= 100 * 10 ** -places);
  if (long.length < ENOUGH) return [];
  const quarter = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
  const step = 10 ** (Math.floor(Math.log10(quarter(0.5))) - 2);
  if ((quarter(0.75) - quarter(0.25)) / step < SPAN) return [];
  const counts = Array.from({ length: 10 }, () => 0);
  for (const { value } of long) {
    const digit = Number(value.toExponential(2)[3]);
    counts[digit] = (counts[digit] ?? 0) + 1;
  }
  const even = long.length / 10;
  const chi = counts.reduce((sum, count) => sum + (count - even) ** 2 / even, 0);
  if (chi <= SELDOM) return [];
  return [
    {
      rule: "digit-pattern",
      weight: "note",
      ...where(table, long[0]?.at ?? 0, column.id),
      message: `"${column.header}": the third digits of ${long.length} readings are unevenly spread: ${counts.map((count, digit) => `${digit}: ${count}`).join(", ")} (about ${even.toFixed(0)} each are to be expected; chi-square ${chi.toFixed(0)}, above ${SELDOM} about once in a million). Does the instrument show a third digit?`,
      found: Number(chi.toFixed(0)),
      expected: `at most ${SELDOM}`,
    },
  ];
}
