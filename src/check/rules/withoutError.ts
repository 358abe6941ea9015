import type { FindingsText } from "../../messages/messages";
import { alikeRows, cellsOf } from "../../records/cellsOf";
import { type CellValue, type Column, isBlank, type Row } from "../../records/kind";
import { seldom } from "../among/chance";
import { decimals, inOrder, measured, median, robust } from "../among/similar";
import { type Context, type JudgedTable, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";
import { SELDOM } from "./sameRun";

/** Points of a device from which on no error at any of them is asked about. */
const POINTS = 3;
/** Rows of others by which it is known how far such devices are off. */
const OTHERS = 8;
/** Above `SELDOM` and up to here it is worth a note, and no more. */
const UNLIKELY = 0.02;
/** Readings within half a decade are written with as many digits. */
const sizeOf = (reading: number): number => Math.round(2 * Math.log10(reading));
/** Above this share of how far such devices are off, an error is one. */
const SMALL = 0.25;
/** Devices that a finding names one by one. */
const NAMED = 5;

/** Devices whose readings are all exactly what they should be. */
export const withoutError: Rule = {
  id: "without-error",
  reads: "table",
  find: (table, context) => {
    const { kind } = table;
    const ids = new Set(
      kind.accepted.flatMap(({ sense, value }) => (sense === "within" ? [value] : [])),
    );
    return kind.columns
      .filter(({ id, value }) => ids.has(id) && value !== undefined)
      .flatMap((error) => ofError(table, error, context));
  },
};

/** A row's error, the least step between two of them, and whether it is nothing within that. */
interface Point {
  readonly row: number;
  readonly error: number;
  readonly step: number;
}

function ofError(table: JudgedTable, error: Column, context: Context): Finding[] {
  const devices = alikeRows(table.rows, ["object", "part"], table.aside);
  const reading = hasNone(table, error, devices) ? readingOf(table, error, context) : undefined;
  if (!reading) return [];
  const points = pointsOf(table, error, reading, context);
  const blocks = devices.flatMap((rows) => {
    const own = rows.flatMap((row) => points.get(row) ?? []);
    return own.length >= POINTS ? [own] : [];
  });
  for (const steps of WITHIN) {
    const exact = blocks.filter((own) => own.every((point) => isWithin(point, steps)));
    const others = blocks.filter((own) => !exact.includes(own)).flat();
    if (exact.length === 0 || others.length < OTHERS) continue;
    const expected = exact.reduce(
      (product, own, at) =>
        (product * chanceOf(own, others, steps) * (blocks.length - at)) / (at + 1),
      1,
    );
    if (expected < (steps > 1 ? SELDOM : UNLIKELY))
      return [finding(table, reading, exact, expected, steps, context.text)];
  }
  return [];
}

/**
 * Last digits within which a reading has no error: half a digit where it was written down as it was worked
 * out, and a few where it was worked out by somebody else's rounded constants.
 */
const WITHIN = [0.5, 3.5] as const;

/** Whether a device is there that hardly shows an error: without one nothing more is worked out. */
function hasNone(
  table: JudgedTable,
  { id }: Column,
  devices: readonly (readonly number[])[],
): boolean {
  const errors = cellsOf(table.judged, id).filter((error) => typeof error === "number");
  const { spread } = robust(errors);
  return devices.some(
    (rows) =>
      rows.length >= POINTS &&
      rows.every((row) => {
        const error = table.judged[row]?.[id];
        return isBlank(error) || (typeof error === "number" && Math.abs(error) <= SMALL * spread);
      }),
  );
}

const isWithin = ({ error, step }: Point, steps: number) => Math.abs(error) <= step * steps + 1e-9;

/** How likely a device is without any error by chance, by how far the others are off. */
function chanceOf(own: readonly Point[], others: readonly Point[], steps: number): number {
  const share = others.filter((point) => isWithin(point, steps)).length / others.length;
  const { spread } = robust(others.map(({ error }) => error));
  return own.reduce(
    (product, { step }) => product * Math.min(1, Math.max(share, (2 * steps * step) / spread)),
    1,
  );
}

const errorOf = (row: Row, error: Column, { lineup }: Context): number | undefined => {
  const value = error.value?.(row, lineup, new Map());
  return typeof value === "number" ? value : undefined;
};

/** The reading that an error is worked out from: the last one that moves it. */
function readingOf(table: JudgedTable, error: Column, context: Context): Column | undefined {
  return measured(table).findLast(({ id }) =>
    table.judged.some((row) => {
      const cell = row[id];
      if (typeof cell !== "number" || cell === 0) return false;
      const [was, now] = [row, { ...row, [id]: 1.01 * cell }].map((one) =>
        errorOf(one, error, context),
      );
      return was !== undefined && now !== undefined && was !== now;
    }),
  );
}

function pointsOf(
  table: JudgedTable,
  error: Column,
  { id }: Column,
  context: Context,
): ReadonlyMap<number, Point> {
  const usual = usualDecimals(cellsOf(table.judged, id));
  return new Map(
    table.judged.flatMap((row, at) => {
      const [cell, now] = [row[id], errorOf(row, error, context)];
      if (typeof cell !== "number" || !(cell > 0) || now === undefined || table.aside.has(at))
        return [];
      const last = 10 ** -Math.max(decimals(cell), usual.get(sizeOf(cell)) ?? 0);
      const next = errorOf({ ...row, [id]: cell + last }, error, context);
      const step = next === undefined ? 0 : Math.abs(next - now);
      return [[at, { row: at, error: now, step }] as const];
    }),
  );
}

/** Digits after the point that most readings have, by their size. */
function usualDecimals(cells: readonly CellValue[]): ReadonlyMap<number, number> {
  const sizes = new Map<number, number[]>();
  for (const cell of cells)
    if (typeof cell === "number" && cell > 0) {
      const some = sizes.get(sizeOf(cell));
      if (some) some.push(decimals(cell));
      else sizes.set(sizeOf(cell), [decimals(cell)]);
    }
  return new Map([...sizes].map(([size, some]) => [size, Math.floor(median(inOrder(some)))]));
}

function finding(
  table: JudgedTable,
  { id, header }: Column,
  exact: readonly (readonly Point[])[],
  expected: number,
  steps: number,
  text: FindingsText,
): Finding {
  const [row = 0, ...further] = exact.flatMap(([first]) => (first ? [first.row] : []));
  const points = exact.flat().length;
  return {
    rule: "without-error",
    weight: expected < SELDOM ? "query" : "note",
    ...where(table, row, id),
    message: text.rules["without-error"].message(
      rowName(table, row),
      header,
      points,
      further.slice(0, NAMED).map((one) => rowName(table, one)),
      seldom(expected),
      steps > 1,
    ),
    found: points,
  };
}
