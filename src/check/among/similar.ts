import { memoizeFor } from "../../quantities/memoizeFor";
import { alikeIn, cellsOf } from "../../records/cellsOf";
import { type Column, keyIds, type Row } from "../../records/kind";
import type { JudgedTable } from "../context";
import { eachReading } from "./eachReading";

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

/** Phases by letters, as lineups call them: A, B, C; R, S, T; U, V, W; R, Y, B. */
const LETTER = /\b[ABCRSTUVWY]\b/g;
const OF_PHASES: ReadonlySet<string> = new Set(["combination", "phase", "pole"]);

/** A name without its numbers and phases, so that `Breaker Q0`, `L1-E` and `B-E` say what sort of thing they name. */
function sort(cell: Row[string] | undefined, id: string): string {
  const name = String(cell ?? "").replace(/[\d=]+/g, "");
  return OF_PHASES.has(id) ? name.replace(LETTER, "L") : name;
}

/**
 * Readings of a column by what may be compared: rows whose ratings agree and whose names differ in
 * numbers alone. Blanks, bounds, nothing and less than nothing are left out.
 */
export const similarReadings = (table: JudgedTable, column: Column): readonly Similar[] => {
  const known = similarIn(table);
  const before = known.get(column.id);
  if (before) return before;
  const similar = readingsBy(groupsIn(table), table, column);
  known.set(column.id, similar);
  return similar;
};

/** By column, since two rules ask for the same. */
const similarIn = memoizeFor((_table: JudgedTable) => new Map<string, readonly Similar[]>());

/** Rows by what may be compared. */
export interface Groups {
  /** The group of each row. */
  readonly of: Int32Array;
  /** What names each group: its names without their numbers, and its ratings. */
  readonly names: readonly string[];
}

/** The groups of a table's rows: of the same ratings, and of names that differ in numbers alone. */
export const groupsIn = memoizeFor(({ kind, rows }: JudgedTable): Groups => {
  const givens = kind.columns.filter(
    ({ id, role, value }) => role === "given" && value === undefined && id !== "document",
  );
  const keys = keyIds(kind).filter((id) => id !== "object");
  const alike = alikeIn(rows, [...givens.map(({ id }) => id), ...keys]);
  const known = new Map<string, number>();
  const group = alike.first.map((at) => {
    const row = rows[at] ?? {};
    const name = [
      ...keys.map((id) => (PLACES.has(id) ? sort(row[id], id) : row[id])),
      RATINGS,
      ...givens.map(({ id }) => row[id]),
    ].join("\u0000");
    const before = known.get(name) ?? known.size;
    known.set(name, before);
    return before;
  });
  return { of: alike.group.map((its) => group[its] ?? 0), names: [...known.keys()] };
});

/** A group whose readings lie in less than this many decades, as do all it is held against, holds none that stands out. */
const NARROW = 0.45;

function readingsBy({ of, names }: Groups, table: JudgedTable, column: Column): Similar[] {
  const widths = widthsOf(of, names.length, table, column);
  // As a rule a column holds no group that is wide, and no reading of nothing: nobody asks for its readings.
  if (widths.every((width) => width <= NARROW) && !cellsOf(table.rows, column.id).includes(0))
    return [];
  const groups = names.map((): Read[] => []);
  const objects = cellsOf(table.rows, "object");
  eachReading(table, column, (row, value) => {
    if (value <= 0) return;
    const read = { row, object: String(objects[row]), value, log: Math.log10(value) };
    groups[of[row] ?? 0]?.push(read);
  });
  const centres = groups.map((group) => (group.length < LEAST ? Number.NaN : centreOf(group)));
  const isBeside = (one: number, other: number) =>
    one !== other &&
    Math.abs((centres[one] ?? Number.NaN) - (centres[other] ?? Number.NaN)) < 1 &&
    ratingsOf(names[one] ?? "") === ratingsOf(names[other] ?? "");
  const similar = groups.flatMap((group, at): Similar[] => {
    if (group.length === 0) return [];
    if (group.length >= FEW || group.length < LEAST) return [{ group, beside: [] }];
    return [{ group, beside: groups.filter((_others, other) => isBeside(at, other)).flat() }];
  });
  return similar.sort((one, other) => (one.group[0]?.row ?? 0) - (other.group[0]?.row ?? 0));
}

/** How many decades the readings of each group lie across. */
function widthsOf(of: Int32Array, count: number, table: JudgedTable, column: Column): number[] {
  const least = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const most = new Float64Array(count);
  eachReading(table, column, (row, value) => {
    const group = of[row] ?? 0;
    if (value < (least[group] ?? 0)) least[group] = value;
    if (value > (most[group] ?? 0)) most[group] = value;
  });
  return Array.from(least, (low, group) =>
    (most[group] ?? 0) > 0 ? Math.log10((most[group] ?? 0) / low) : 0,
  );
}

/** The part of a group's name that tells its ratings. */
export const ratingsOf = (name: string) => name.slice(name.indexOf(RATINGS));
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
  (Array.isArray(numbers) ? new Float64Array(numbers) : Float64Array.from(numbers)).sort();

/** Digits after the decimal point of a number as it is written. */
export function decimals(value: number): number {
  const size = Math.abs(value);
  if (size >= 1e-6 && size < 1e9)
    for (let digits = 0; digits < POWERS.length; digits++) {
      const power = POWERS[digits] ?? 1;
      if (Math.round(value * power) / power === value) return digits;
    }
  const text = String(value);
  const point = text.indexOf(".");
  return point < 0 ? 0 : text.length - point - 1;
}

/** Powers of ten by which a number of so many decimals is whole. */
const POWERS: readonly number[] = [1, 10, 100, 1e3, 1e4, 1e5];
