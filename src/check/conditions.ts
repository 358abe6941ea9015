import { memoizeFor } from "../quantities/memoizeFor";
import type { Unit } from "../quantities/units";
import { cellsOf, forAlike } from "../records/cellsOf";
import type { Column } from "../records/kind";
import { exactly } from "../records/quantity";
import { inOrder, median, robust } from "./among/similar";
import { dayOf, type JudgedTable } from "./context";

/** A condition of a row beside those of the other rows of its day and instrument. */
export interface Departure {
  readonly row: number;
  readonly column: Column & { readonly unit: Unit };
  readonly value: number;
  /** The middle of its group, how far the group spreads, and how many rows it has. */
  readonly middle: number;
  readonly spread: number;
  readonly count: number;
}

/** What a thermometer, hygrometer or barometer on site is uncertain by, and how far one place lies from another on one day (common practice). */
const USUAL: Readonly<Record<string, { readonly reading: number; readonly place: number }>> = {
  "°C": { reading: 2, place: 6 },
  "%": { reading: 5, place: 20 },
  kPa: { reading: 0.5, place: 1.5 },
};

/** Rows from which on a day has a middle. */
const LEAST = 4;
/** Rows further apart than this were measured at other times of the day. */
const HOURS = 3 / 24;
const HEATED =
  /heat|warm|dryer|dried|\bsun\b|oven|after load|heiz|erwarm|trock|chauff|calent|aquec|تسخين/;

type Condition = Departure["column"];

/** Whether a departure is more than what one place differs from another by. */
export const isFar = ({ column, value, middle, spread }: Departure): boolean =>
  Math.abs(value - middle) > Math.max(USUAL[column.unit]?.place ?? 0, 4 * spread);

/** Conditions of the air, the surface or the conductor: not what was measured, nor what was applied. */
export const conditionsOf = ({ kind, at }: JudgedTable): Condition[] =>
  kind.columns.filter(
    (column): column is Condition =>
      column.role === "entry" &&
      at.has(column.id) &&
      column.unit !== undefined &&
      column.unit in USUAL &&
      (column.need === "condition" || column.need === "trail"),
  );

/** Whether remarks say that something was warmed. */
export const isHeated = ({ rows }: JudgedTable, row: number): boolean =>
  HEATED.test(
    String(rows[row]?.remarks ?? "")
      .normalize("NFKD")
      .replace(/\p{M}/gu, "")
      .toLowerCase(),
  );

/** The conditions of a table that depart from the middle of their day and instrument by more than a reading is uncertain by. */
export const departures = memoizeFor((table: JudgedTable): readonly Departure[] =>
  conditionsOf(table).flatMap((column) => departuresOf(table, column)),
);

function departuresOf(table: JudgedTable, column: Condition): Departure[] {
  const groups = new Map<string, { row: number; value: number; when: number }[]>();
  const groupOf = forAlike(table.rows, ["instrument", "date"], ({ date, instrument }) => {
    const when = dayOf(date);
    if (when === undefined) return undefined;
    const name = `${Math.floor(when)} ${String(instrument ?? "").toLowerCase()}`;
    const group = groups.get(name) ?? [];
    groups.set(name, group);
    return { when, group };
  });
  const cells = cellsOf(table.rows, column.id);
  for (let row = 0; row < cells.length; row++) {
    const value = exactly(cells[row], column.unit);
    const its = value === undefined || table.aside.has(row) ? undefined : groupOf(row);
    if (its && value !== undefined) its.group.push({ row, value, when: its.when });
  }
  return [...groups.values()].flatMap((group) => {
    if (group.length < LEAST) return [];
    const middle = median(inOrder(group.map(({ value }) => value)));
    const { spread } = robust(group.map(({ value }) => value));
    const usual = Math.max(USUAL[column.unit]?.reading ?? 0, 2 * spread);
    return group
      .filter(({ value }) => Math.abs(value - middle) > usual)
      .flatMap(({ row, value, when }): Departure[] => {
        const near = group.filter((one) => Math.abs(one.when - when) <= HOURS).length;
        return near < LEAST || isHeated(table, row)
          ? []
          : [{ row, column, value, middle, spread, count: near }];
      });
  });
}
