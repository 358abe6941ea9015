import type { JudgedTable } from "../check/context";
import type { Messages } from "../messages/messages";
import { type Row, verdictOf } from "../records/kind";
import { kindWords } from "../records/kindWords";
import { quantity } from "../records/quantity";

/** A point with the row of the table that it is of; where a pen is lifted, none. */
export type PicturePoint = readonly [x: number, y: number, row?: number] | undefined;

/**
 * How points are drawn: by themselves; on a curve that joins them; joined two by two, such as before and
 * after; or as limits, each as wide as its name or, where numbers stand along, from point to point.
 */
export type PictureShape = "points" | "curve" | "joins" | "limit";

/** A drawing of numbers: names or numbers along, a quantity upward. */
export interface Picture {
  readonly title: string;
  /** Names along; undefined where numbers stand along. */
  readonly names?: readonly string[];
  /** Whether a point stands anywhere along, from 0 to as many names as there are, and not over a name by its number. */
  readonly isSpread?: boolean;
  readonly along?: { readonly header: string; readonly log: boolean };
  readonly upward: { readonly header: string; readonly log: boolean };
  readonly series: readonly {
    readonly name: string;
    readonly shape: PictureShape;
    /** How its points look where that tells something: a result, or a bound. */
    readonly look?: "pass" | "fail" | "inconclusive" | "above";
    readonly points: readonly PicturePoint[];
  }[];
}

type Series = Picture["series"][number];

/** At most so many records stand in one picture. */
const MOST = 400;

/** What pictures are labelled in. */
type PictureText = Pick<Messages, "plot" | "language">;

/** The pictures that say more than a row's numbers: its neighbours and its limit, its parts, and its curve. */
export function picturesOf(table: JudgedTable, row: number, messages: PictureText): Picture[] {
  const text = messages.plot;
  const { title } = kindWords(messages, table.kind.id);
  const { kind, judged } = table;
  const own = judged[row];
  if (!own) return [];
  const within = [curveOf(table, own, row, messages), partsOf(table, own, row)].filter(
    (one) => one !== undefined,
  );
  if (!kind.plot) return within;
  const some = judged.map((one, at) => ({ one, at }));
  const beside = some.filter(({ one }) => one.object === own.object && one.part === own.part);
  const alike = some.filter(({ one }) => sort(one) === sort(own)).slice(0, MOST);
  return [
    ...within,
    ...compared(table, beside, String(own.object), text),
    ...(alike.length > beside.length ? compared(table, alike, text.across(title), text) : []),
  ];
}

/** What a record is of, wherever it stands: poles with poles, joints with joints. */
const sort = (row: Row): string =>
  [
    String(row.part ?? "")
      .replace(/[^\p{L} ]+/gu, "")
      .replace(/\b\p{Lu}$/u, ""),
    row.stage ?? "",
    row.operation ?? "",
  ].join("|");

interface Placed {
  readonly one: Row;
  /** Its place in the table. */
  readonly at: number;
}

const isDrawable = (number: number | undefined, log: boolean): number is number =>
  number !== undefined && Number.isFinite(number) && (!log || number > 0);

const headerIn = ({ kind }: JudgedTable, id: string) =>
  kind.columns.find((one) => one.id === id)?.header ?? id;

function compared(
  table: JudgedTable,
  rows: readonly Placed[],
  title: string,
  text: Messages["plot"],
): Picture[] {
  const { kind } = table;
  const { plot } = kind;
  if (!plot) return [];
  const many = new Set(rows.map(({ one }) => one.object)).size > 1;
  const parts = new Set(rows.map(({ one }) => one.part)).size;
  const keys = kind.columns.filter(
    ({ role, id }) =>
      role === "key" &&
      id !== "stage" &&
      (many || (id !== "object" && (id !== "part" || parts > 1))),
  );
  const nameOf = (row: Row) =>
    keys.map(({ id }) => String(row[id] ?? "")).join(" ") || String(row.part ?? row.object ?? "");
  const names = [...new Set(rows.map(({ one }) => nameOf(one)))];
  const stageOf = (row: Row) => String(row.stage ?? "");
  const stages = [...new Set(rows.map(({ one }) => stageOf(one)))];
  const points = (id: string, some: readonly Placed[]): PicturePoint[] =>
    some.flatMap(({ one, at }): PicturePoint[] => {
      const value = quantity(one[id], plot.unit)?.value;
      return isDrawable(value, plot.log) ? [[names.indexOf(nameOf(one)), value, at]] : [];
    });
  const readings = stages.map(
    (stage): Series => ({
      name: stage || headerIn(table, plot.value),
      shape: "points",
      points: points(
        plot.value,
        rows.filter(({ one }) => stageOf(one) === stage),
      ),
    }),
  );
  if (readings.every((series) => series.points.length === 0)) return [];
  const series = [
    ...readings,
    { name: stages.join(text.joins), shape: "joins", points: joined(readings) },
    { name: headerIn(table, plot.limit), shape: "limit", points: once(points(plot.limit, rows)) },
  ] as const;
  return [
    {
      title,
      names,
      upward: { header: headerIn(table, plot.value), log: plot.log },
      series: series.filter((one) => one.points.length > 0),
    },
  ];
}

/** From the reading of one stage to that of the next, where both are there, name by name. */
const joined = (readings: readonly Series[]): PicturePoint[] =>
  readings.slice(1).flatMap(({ points }, index) =>
    points.flatMap((point): PicturePoint[] => {
      const before = readings[index]?.points.find((one) => one?.[0] === point?.[0]);
      return before && point ? [before, point, undefined] : [];
    }),
  );

/** Of limits that are the same at one place, one. */
const once = (points: readonly PicturePoint[]): PicturePoint[] => [
  ...new Map(points.map((point) => [`${point?.[0]} ${point?.[1]}`, point])).values(),
];

/** The readings of one row side by side, such as the times of the poles, within their limits. */
function partsOf(table: JudgedTable, row: Row, at: number): Picture | undefined {
  const { parts } = table.kind;
  if (!parts) return undefined;
  const value = (id: string) => quantity(row[id], parts.unit)?.value;
  const points = (id: (part: string) => string): PicturePoint[] =>
    parts.values.flatMap((part, index): PicturePoint[] => {
      const found = value(id(part));
      return isDrawable(found, false) ? [[index, found, at]] : [];
    });
  const readings = points((part) => part);
  if (readings.length === 0) return undefined;
  return {
    title: parts.title(row),
    names: parts.values.map((id) => headerIn(table, id).replace(` ${parts.unit}`, "")),
    upward: { header: `${parts.upward}, ${parts.unit}`, log: false },
    series: [
      { name: parts.upward, shape: "points" as const, points: readings },
      ...parts.limits.map(
        (id): Series => ({ name: headerIn(table, id), shape: "limit", points: points(() => id) }),
      ),
    ].filter(({ points }) => points.length > 0),
  };
}

function curveOf(
  table: JudgedTable,
  row: Row,
  at: number,
  messages: PictureText,
): Picture | undefined {
  const { kind } = table;
  const text = messages.plot;
  const { curve } = kind;
  if (!curve) return undefined;
  const number = (id: string | number) => (typeof id === "number" ? id : Number(row[id]));
  const points = curve.points
    .map(([x, y]) => [number(x), quantity(row[y], curve.unit)?.value ?? 0, at] as const)
    .filter(([x, y]) => x > 0 && y > 0);
  if (points.length < 2) return undefined;
  const mark = curve.mark === undefined ? 0 : Number(row[curve.mark]);
  const [up, down] = sweeps(points);
  const along = points.map(([x]) => x);
  return {
    title: `${kindWords(messages, kind.id).title}: ${verdictOf(row)}`,
    along: { header: curve.along, log: true },
    upward: { header: curve.upward, log: true },
    series: [
      { name: down.length > 0 ? text.rising : curve.upward, shape: "curve", points: up },
      { name: text.falling, shape: "curve", points: down },
      {
        name: headerIn(table, curve.mark ?? ""),
        shape: "limit",
        points:
          mark > 0
            ? [
                [Math.min(...along), mark],
                [Math.max(...along), mark],
              ]
            : [],
      },
    ].filter(({ points }) => points.length > 0) as Series[],
  };
}

/** A curve that turns back after its highest point was measured up and down again: each way by itself. */
function sweeps<P extends readonly [number, number, number]>(points: readonly P[]): [P[], P[]] {
  const top = points.reduce((best, [, y], at) => (y > (points[best]?.[1] ?? 0) ? at : best), 0);
  const isTurning = points.length - 1 - top >= 2;
  return isTurning ? [points.slice(0, top + 1), points.slice(top)] : [[...points], []];
}
