import type { JudgedTable } from "../check/context";
import type { Messages } from "../messages/messages";
import { type RecordKind, type Row, verdictOf } from "../records/kind";
import { quantity } from "../records/quantity";
import type { Verdict } from "../standards/judge";
import { drawnSvg } from "./pictureOption";
import type { Picture, PicturePoint } from "./pictures";

type Plot = NonNullable<RecordKind["plot"]>;

const VERDICTS = { pass: "Pass", fail: "Fail", inconclusive: "Inconclusive" } as const;
const LOOK = { width: 720, ink: "#1b2a33", number: (value: number) => value.toLocaleString("en") };

/** A reading with the panel that it is of, its row, and its limit where there is one to draw. */
interface Point {
  readonly object: string;
  readonly at: number;
  readonly value: number;
  readonly isAbove: boolean;
  readonly verdict: Verdict;
  readonly limit: number | undefined;
}

/** A plot as an SVG drawing, and the quantity that it has upward. */
export interface DrawnPlot {
  readonly svg: string;
  readonly upward: string;
}

/** Readings of a table against their limits, panel by panel, as a drawing; undefined where there is nothing to draw. */
export function plotSvg(
  table: JudgedTable,
  order: readonly string[],
  text: Messages["report"],
): DrawnPlot | undefined {
  const picture = panelsPicture(table, order, text);
  return picture && { svg: unclipped(drawnSvg(picture, LOOK)), upward: picture.upward.header };
}

/** Of several drawings on one page each would name what its lines are clipped by; all of them is within its axes anyway. */
const unclipped = (svg: string): string =>
  svg.replace(/ clip-path="url\([^)]*\)"/g, "").replace(/<clipPath.*?<\/clipPath>/gs, "");

/**
 * Readings of a table against their limits, each by its result, panel by panel. A reading known only to lie
 * above its number has a look of its own. Undefined where no row has a reading.
 *
 * @param order panels and sections in the order in which they stand
 */
export function panelsPicture(
  { kind, judged }: JudgedTable,
  order: readonly string[],
  { standing, page }: Messages["report"],
): Picture | undefined {
  const { plot } = kind;
  if (!plot) return undefined;
  const points = judged.flatMap((row, at) => pointOf(row, at, plot) ?? []);
  if (points.length === 0) return undefined;
  const present = new Set(judged.map((row) => String(row.object)));
  const names = [...new Set([...order, ...present])].filter((object) => present.has(object));
  const header = (wanted: string) => kind.columns.find(({ id }) => id === wanted)?.header ?? "";
  const along = alongPanels(points, names);
  const readings = (some: typeof along) =>
    some.map(({ x, value, at }): PicturePoint => [x, value, at]);
  return {
    title: header(plot.value),
    names,
    isSpread: true,
    upward: { header: header(plot.value), log: plot.log },
    series: [
      { name: header(plot.limit), shape: "limit" as const, points: levels(along) },
      ...(["pass", "fail", "inconclusive"] as const).map((look) => ({
        name: standing[look],
        shape: "points" as const,
        look,
        points: readings(
          along.filter(({ verdict, isAbove }) => verdict === VERDICTS[look] && !isAbove),
        ),
      })),
      {
        name: page.above,
        shape: "points" as const,
        look: "above" as const,
        points: readings(along.filter(({ isAbove }) => isAbove)),
      },
    ].filter((series) => series.points.length > 0),
  };
}

function pointOf(row: Row, at: number, { value, limit, unit, log }: Plot): Point | undefined {
  const drawable = (number: number | undefined) =>
    number !== undefined && Number.isFinite(number) && (!log || number > 0);
  const read = quantity(row[value], unit);
  if (!read || !drawable(read.value)) return undefined;
  const allowed = quantity(row[limit], unit)?.value;
  return {
    object: String(row.object),
    at,
    value: read.value,
    isAbove: read.bound === "above",
    verdict: verdictOf(row),
    limit: drawable(allowed) ? allowed : undefined,
  };
}

/** A point with its place along the panels, and how much room it has to each side. */
interface Along extends Point {
  readonly x: number;
  readonly side: number;
}

/** Points with their place along: those of a panel evenly spread over its width. */
function alongPanels(points: readonly Point[], names: readonly string[]): Along[] {
  return names.flatMap((object, index) => {
    const group = points.filter((point) => point.object === object);
    const room = 0.9 / group.length;
    return group.map((point, place) => ({
      ...point,
      x: index + 0.05 + room * (place + 0.5),
      side: room / 2,
    }));
  });
}

/** The limits as steps, each as wide as its reading has room; the pen is lifted between panels, and where a reading has none. */
const levels = (along: readonly Along[]): PicturePoint[] =>
  along.flatMap(({ x, side, limit, object }, index): PicturePoint[] => {
    if (limit === undefined) return [];
    const before = along[index - 1];
    const goesOn = before?.object === object && before.limit !== undefined;
    return [...(goesOn ? [] : [undefined]), [x - side, limit], [x + side, limit]];
  });
