import type { FindingsText } from "../../messages/messages";
import { cellsOf } from "../../records/cellsOf";
import type { Column } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { decimals, inOrder, measured } from "../among/similar";
import { type JudgedTable, type Rule, where } from "../context";
import type { Finding } from "../findings/finding";

/** Readings from which on digits are looked at. */
const ENOUGH = 60;
/** Chi-square of ten equally likely digits, exceeded by chance once in a million tables (9 degrees of freedom; computed). */
const SELDOM = 45;
/** Steps of the third digit that the middle half of the readings must span, so that digits have no reason to cluster. */
const SPAN = 30;

/** Third digits of many readings of which some stand far more often than others. */
export const digitPattern: Rule = {
  id: "digit-pattern",
  reads: "table",
  find: (table, { text }) =>
    measured(table).flatMap((column) => patternOf(table, column, text.rules["digit-pattern"])),
};

function patternOf(
  table: JudgedTable,
  column: Column,
  text: FindingsText["rules"]["digit-pattern"],
): Finding[] {
  if (column.accepts?.type !== "reading" || !column.unit) return [];
  const { unit } = column;
  const read = cellsOf(table.rows, column.id).map((cell, at) =>
    cell === null || table.aside.has(at) ? undefined : exactly(cell, unit),
  );
  const values = read.filter((value) => value !== undefined && value > 0) as number[];
  const sorted = inOrder(values);
  const places = values.reduce((most, value) => Math.max(most, decimals(value)), 0);
  const long = values.filter((value) => value >= 100 * 10 ** -places);
  if (long.length < ENOUGH) return [];
  const quarter = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
  const step = 10 ** (Math.floor(Math.log10(quarter(0.5))) - 2);
  if ((quarter(0.75) - quarter(0.25)) / step < SPAN) return [];
  const counts = Array.from({ length: 10 }, () => 0);
  for (const value of long) {
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
      ...where(table, Math.max(0, read.indexOf(long[0])), column.id),
      message: text.message(column.header, {
        readings: long.length,
        counts,
        even: even.toFixed(0),
        chi: chi.toFixed(0),
        seldom: SELDOM,
      }),
      found: Number(chi.toFixed(0)),
      expected: text.expected(SELDOM),
    },
  ];
}
