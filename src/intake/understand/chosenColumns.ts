import { groupBy } from "../../quantities/groupedBy";
import { readUnit } from "../../quantities/reading/readUnit";
import { splitReading } from "../../quantities/reading/splitReading";
import { type Unit, unitSize } from "../../quantities/units";
import { areTicks, ticked } from "../cells/listWord";
import { positionReader } from "../words/readPosition";
import { clockSeconds } from "../words/timesAcross";
import type { CellsOf, ExportColumn } from "../words/titles";
import type { Assigned } from "./assignColumns";
import { entriesOf } from "./assignColumns";
import { type SeenColumn, senseOf } from "./columnScore";
import type { KnownKind } from "./knowledge";
import type { Naming } from "./namingRoles";

/** A column of a table whose cells are those of several record columns, each with the lines that are its. */
export interface Chosen {
  readonly of: Assigned;
  readonly parts: readonly { readonly field: string; readonly cells: CellsOf }[];
}

/** Seconds that a text tells: `30`, `30 s`, `1 min`, `01:30`, in the unit of its column where it has none. */
const secondsIn = (text: string, unit: Unit): number | undefined => {
  const clock = clockSeconds(text);
  if (clock !== undefined) return clock;
  const parts = splitReading(text);
  if (!parts || parts.number === "") return undefined;
  const own = parts.unit === "" ? undefined : readUnit(parts.unit);
  const size = unitSize(own?.ok ? own.value : unit);
  return size.quantity === "time"
    ? Number(parts.number.replace(",", ".")) * (size.times ?? 10 ** size.exponent)
    : undefined;
};

/** The times at which a kind takes readings, each with its column. */
const timesOf = ({ kind }: KnownKind): ReadonlyMap<number, string> =>
  new Map(
    entriesOf(kind).flatMap(({ id }): [number, string][] => {
      const seconds = senseOf(kind.id, id)?.seconds;
      return seconds === undefined ? [] : [[seconds, id]];
    }),
  );

/** The column that tells at what time each line was read, where the kind reads at several. */
export const elapsedColumn = (
  columns: readonly SeenColumn[],
  known: KnownKind,
): { readonly seen: SeenColumn; readonly unit: Unit } | undefined => {
  const times = timesOf(known);
  if (times.size < 2) return undefined;
  return columns.flatMap((seen) => {
    const { title, cells } = seen;
    const isTime = ["elapsed", "time", "held"].some((sense) => title.senses.has(sense as "time"));
    const unit = seen.unit ?? (isTime ? "s" : undefined);
    if (unit === undefined || unitSize(unit).quantity !== "time" || cells.texts.length === 0)
      return [];
    const known = cells.texts.filter((text) => times.has(secondsIn(text, unit) ?? -1));
    return known.length / cells.texts.length >= 0.7 ? [{ seen, unit }] : [];
  })[0];
};

/** The cells of a resistance beside its time, as the columns of the kind for these times. */
export const byElapsed = (
  assigned: readonly Assigned[],
  elapsed: NonNullable<ReturnType<typeof elapsedColumn>>,
  known: KnownKind,
): Chosen[] =>
  assigned
    .filter(
      ({ column, seen }) =>
        [...timesOf(known).values()].includes(column.id) && seen.title.seconds === undefined,
    )
    .map((of) => ({
      of,
      parts: [...timesOf(known)].map(([seconds, field]) => ({
        field,
        cells: {
          column: of.seen.index,
          beside: elapsed.seen.index,
          is: (text: string) => secondsIn(text, elapsed.unit) === seconds,
        },
      })),
    }));

/** The times of a breaker's poles one below the other, as the columns of the poles. */
export const byPole = (
  assigned: readonly Assigned[],
  position: Naming,
  texts: readonly string[],
): Chosen[] => {
  const read = positionReader(texts);
  const isPole = (pole: string) => (text: string) => {
    const found = read(text);
    return found.ok && found.value === pole;
  };
  return assigned
    .filter(({ column }) => column.id === "l1")
    .map((of) => ({
      of,
      parts: ["l1", "l2", "l3"].map((field) => ({
        field,
        cells: { column: of.seen.index, beside: position.index, is: isPole(field.toUpperCase()) },
      })),
    }));
};

/**
 * The points of a curve one below the other, as the columns of its points; those of curves taken from their upper
 * end down, as a core is demagnetized on the way, from the last line to the first.
 */
export const byPoint = (
  assigned: readonly Assigned[],
  naming: readonly Naming[],
  known: KnownKind,
  columns: readonly SeenColumn[],
): Chosen[] => {
  const names = naming.map(({ index }) => index);
  const volts = assigned.find(({ column }) => column.id === "v1")?.seen;
  const falling = volts ? fallingPoints(volts, names, columns) : undefined;
  return assigned
    .filter(({ column }) => /^[av]1$/.test(column.id))
    .map((of) => ({
      of,
      parts: entriesOf(known.kind)
        .filter(({ id }) => id[0] === of.column.id[0] && /^[av]\d+$/.test(id))
        .map(({ id }) => {
          const point = Number(id.slice(1));
          const nth = falling ? falling + 1 - point : point;
          return { field: id, cells: { column: of.seen.index, nth, names } };
        }),
    }));
};

/** How many points each curve has, where all have as many (of the last the lines may end) and the voltages of each fall. */
const fallingPoints = (
  volts: SeenColumn,
  names: readonly number[],
  columns: readonly SeenColumn[],
): number | undefined => {
  const { values, lines } = volts.cells;
  if (values.length !== lines.length) return undefined;
  const named = columns.filter(({ index }) => names.includes(index)).map(({ cells }) => cells);
  const keyAt = (line: number) =>
    named.map(({ texts, lines }) => texts[lines.indexOf(line)] ?? "").join("\n");
  const points = values.map((volts, at) => ({ volts, line: lines[at] ?? 0 }));
  const curves = groupBy(points, ({ line }) => keyAt(line));
  const [first = []] = curves;
  const areAlike = curves.slice(0, -1).every(({ length }) => length === first.length);
  const fall = curves.every((curve) =>
    curve.every(({ volts }, at) => at === 0 || volts < (curve[at - 1]?.volts ?? 0)),
  );
  return areAlike && fall && first.length > 2 ? first.length : undefined;
};

/** Columns of answers that are ticked by crosses, with the ticks that these are. */
export const byTicks = (assigned: readonly Assigned[]): Chosen[] =>
  assigned
    .filter(({ column, seen }) => column.accepts?.type === "list" && areTicks(seen.cells.texts))
    .map((of) => ({
      of,
      parts: [{ field: of.column.id, cells: { column: of.seen.index, part: ticked } }],
    }));

/** The columns of a table with those that others hold the cells of. */
export const withChosen = (
  columns: readonly ExportColumn[],
  chosen: readonly Chosen[],
): readonly ExportColumn[] => {
  if (chosen.length === 0) return columns;
  const held = new Set(chosen.map(({ of }) => of.seen.index));
  const own = columns.map((column) =>
    held.has(column.index)
      ? { ...column, field: undefined, unit: undefined, says: undefined, spare: true as const }
      : column,
  );
  const more = chosen.flatMap(({ of, parts }) => {
    const { title = "", unit, says } = columns[of.seen.index] ?? {};
    return parts.map(({ field, cells }) => ({ title, field, unit, says, from: cells }));
  });
  return [...own, ...more.map((column, at) => ({ ...column, index: own.length + at }))];
};
