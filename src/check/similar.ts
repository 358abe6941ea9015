import { memoizeFor } from "../quantities/memoizeFor";
import { type Column, keyIds, type Row } from "../records/kind";
import { exactly } from "../records/quantity";
import type { JudgedTable } from "./context";

/** One reading that is a number above nothing. */
export interface Read {
  readonly row: number;
  readonly object: string;
  readonly value: number;
  readonly log: number;
}

/** Readings that may be compared; and, of a small group, those of other groups of the same ratings and size of reading. */
export interface Similar {
  readonly group: readonly Read[];
  readonly beside: readonly Read[];
}

const PLACES: ReadonlySet<string> = new Set(["object", "part", "combination", "phase", "pole"]);

/** Groups below this size are held against others whose ratings agree, unless they are too small even for that. */
const FEW = 6;
const LEAST = 3;
/** Where in a group's name the ratings begin. */
const RATINGS = "\u0001";

/** A name without its numbers, so that `Breaker Q0`, `L1-E` and `L2-E` say what sort of thing they name. */
const sort = (cell: Row[string] | undefined) => String(cell ?? "").replace(/[\d=]+/g, "");

/**
 * Readings of a column by what may be compared: rows whose ratings agree and whose names differ in
 * numbers alone. Blanks, bounds, nothing and less than nothing are left out.
 */
export const similarReadings = (table: JudgedTable, column: Column): readonly Similar[] => {
  const known = similarIn(table);
  const before = known.get(column.id);
  if (before) return before;
  const similar = readingsBy(groupNames(table), table, column);
  known.set(column.id, similar);
  return similar;
};

/** By column, since two rules ask for the same. */
const similarIn = memoizeFor((_table: JudgedTable) => new Map<string, readonly Similar[]>());

/** The group of each row: its names without their numbers, and its ratings. */
export const groupNames = memoizeFor((table: JudgedTable): readonly string[] => {
  const givens = table.kind.columns.filter(
    ({ id, role, value }) => role === "given" && value === undefined && id !== "document",
  );
  const keys = keyIds(table.kind);
  return table.rows.map((stored) =>
    [
      ...keys.map((id) => (id === "object" ? "" : PLACES.has(id) ? sort(stored[id]) : stored[id])),
      RATINGS,
      ...givens.map(({ id }) => stored[id]),
    ].join("\u0000"),
  );
});

function readingsBy(names: readonly string[], table: JudgedTable, column: Column): Similar[] {
  const groups = new Map<string, Read[]>();
  for (const [row, stored] of table.rows.entries()) {
    if (table.aside.has(row)) continue;
    const cell = stored[column.id];
    const value = column.unit ? exactly(cell, column.unit) : Number(cell);
    if (cell === null || value === undefined || !(value > 0)) continue;
    const name = names[row] ?? "";
    const read = { row, object: String(stored.object), value, log: Math.log10(value) };
    const group = groups.get(name);
    if (group) group.push(read);
    else groups.set(name, [read]);
  }
  return [...groups].map(([name, group]) => ({
    group,
    beside:
      group.length >= FEW || group.length < LEAST
        ? []
        : [...groups]
            .filter(
              ([other, { length }]) =>
                other !== name && ratingsOf(other) === ratingsOf(name) && length >= LEAST,
            )
            .map(([, others]) => others)
            .filter((others) => Math.abs(centreOf(others) - centreOf(group)) < 1)
            .flat(),
  }));
}

const ratingsOf = (name: string) => name.slice(name.indexOf(RATINGS));
const centreOf = (group: readonly Read[]) => robust(group.map(({ log }) => log)).centre;

/** Columns that hold what was measured, not how it was measured. */
export const measured = (table: JudgedTable): Column[] =>
  table.kind.columns.filter(
    ({ id, role, need, accepts }) =>
      role === "entry" &&
      table.at.has(id) &&
      (accepts?.type === "reading" ||
        (accepts?.type === "number" &&
          (need !== "condition" || table.kind.accepted.some(({ value }) => value === id)))) &&
      id !== "humidity" &&
      id !== "surface" &&
      !id.startsWith("counter"),
  );

/** A voltage is set to what the test asks for. */
export const isSetVoltage = ({ unit, wave }: Column): boolean =>
  wave !== undefined && (unit === "kV" || unit === "V");

export function median(sorted: ArrayLike<number>): number {
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1
    ? (sorted[half] ?? Number.NaN)
    : ((sorted[half - 1] ?? Number.NaN) + (sorted[half] ?? Number.NaN)) / 2;
}

/** Centre and spread of numbers, that a few strays do not move: median, and 1.4826 times the median deviation from it. */
export function robust(numbers: readonly number[]): { centre: number; spread: number } {
  const centre = median(inOrder(numbers));
  const away = inOrder(numbers.map((one) => Math.abs(one - centre)));
  return { centre, spread: 1.4826 * median(away) };
}

/** Numbers from the least to the greatest, each as often as it is there. */
export const inOrder = (numbers: Iterable<number>): Float64Array =>
  Float64Array.from(numbers).sort();

/** Digits after the decimal point of a number as it is written. */
export function decimals(value: number): number {
  const text = String(value);
  const point = text.indexOf(".");
  return point < 0 ? 0 : text.length - point - 1;
}
