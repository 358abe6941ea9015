import type { FindingsText } from "../../messages/messages";
import type { Column } from "../../records/kind";
import { measured, type Read, robust, type Similar, similarReadings } from "../among/similar";
import { type JudgedTable, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../findings/finding";

/** Readings to compare with, at least. */
const ENOUGH = 5;
/** Readings of other panels that are enough, where all that are there lie close together. */
const FEW_ELSEWHERE = 3;
/** How near to exactly a thousand, in decades, beside the group's own spread. */
const NEAR = 0.4;

/** A reading that is a thousand times above or below those it can be compared with: a unit taken for its neighbour. */
export const thousandFold: Rule = {
  id: "mixed-units",
  reads: "table",
  find: (table, { text }) =>
    measured(table).flatMap((column) =>
      similarReadings(table, column).flatMap((similar) =>
        strays(similar).map((stray) => finding(table, column, stray, text.rules["mixed-units"])),
      ),
    ),
};

interface Stray {
  readonly read: Read;
  readonly centre: number;
  readonly spread: number;
  readonly count: number;
}

function strays({ group, beside }: Similar): Stray[] {
  const all = beside.length > 0 ? [...group, ...beside] : group;
  if (all.length <= ENOUGH) return [];
  const logs = all.map(({ log }) => log);
  // Quick way out: nothing is nearly a thousand apart.
  if (width(logs) < 3 - NEAR) return [];
  const middle = robust(logs).centre;
  return group.flatMap((read): Stray[] => {
    // What is far from the whole group is looked at closely, against the others.
    if (Math.abs(read.log - middle) < 1.2) return [];
    const elsewhere = all.filter(({ object }) => object !== read.object);
    const others = (
      elsewhere.length >= FEW_ELSEWHERE ? elsewhere : all.filter((one) => one !== read)
    ).map(({ log }) => log);
    const { centre, spread } = robust(others);
    const reach = Math.max(spread, others.length < ENOUGH ? width(others) : 0);
    const away = Math.abs(read.log - centre);
    return Math.abs(away - 3) <= Math.max(NEAR, 3 * reach) && away > 5 * reach && away > 2
      ? [{ read, centre: 10 ** centre, spread: 10 ** spread, count: others.length }]
      : [];
  });
}

function width(logs: readonly number[]): number {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const log of logs) {
    if (log < least) least = log;
    if (log > most) most = log;
  }
  return most - least;
}

const finding = (
  table: JudgedTable,
  column: Column,
  { read, centre, spread, count }: Stray,
  text: FindingsText["rules"]["mixed-units"],
): Finding => ({
  rule: "mixed-units",
  weight: "query",
  ...where(table, read.row, column.id),
  message: text.message(rowName(table, read.row), {
    value: said(read.value),
    unit: column.unit ?? "",
    times: said(round(read.value / centre)),
    middle: said(round(centre)),
    count,
    factor: said(round(spread)),
  }),
  found: read.value,
  expected: text.expected(said(round(centre))),
});

const round = (value: number) => Number(value.toPrecision(3));
