import { ScatterChart } from "echarts/charts";
import { AriaComponent, GridComponent, LegendComponent } from "echarts/components";
import * as echarts from "echarts/core";
import { SVGRenderer } from "echarts/renderers";
import type { JudgedTable } from "../check/context";
import { escaped } from "../memory/memory";
import type { Messages } from "../messages/messages";
import { type RecordKind, type Row, verdictOf } from "../records/kind";
import { quantity } from "../records/quantity";
import type { Verdict } from "../standards/judge";
import { STANDING } from "./standing";

echarts.use([ScatterChart, GridComponent, LegendComponent, AriaComponent, SVGRenderer]);

type Plot = NonNullable<RecordKind["plot"]>;

const INK = "#1b2a33";
const PALE = "#d5dcdf";
const FONT = "Arial, Helvetica, sans-serif";
const SYMBOLS = { pass: "circle", fail: "diamond", inconclusive: "rect" } as const;
const VERDICTS = { pass: "Pass", fail: "Fail", inconclusive: "Inconclusive" } as const;

const [WIDTH, LEFT, RIGHT] = [1000, 92, 16];

/** A reading with the panel that it is of, and its limit where there is one to draw. */
interface Point {
  readonly object: string;
  readonly value: number;
  readonly isAbove: boolean;
  readonly verdict: Verdict;
  readonly limit: number | undefined;
}

/**
 * Readings of a table against their limits, panel by panel, as an SVG drawing. A reading known only to
 * lie above its number is drawn as an arrow head. Undefined where there is nothing to draw.
 *
 * @param order panels and sections in the order in which they stand
 */
export function plotSvg(
  { kind, judged }: JudgedTable,
  order: readonly string[],
  text: Messages["report"],
): string | undefined {
  const { plot } = kind;
  if (!plot) return undefined;
  const points = judged.flatMap((row) => pointOf(row, plot) ?? []);
  if (points.length === 0) return undefined;
  const present = new Set(judged.map((row) => String(row.object)));
  const objects = [...new Set([...order, ...present])].filter((object) => present.has(object));
  const header = (wanted: string) => kind.columns.find(({ id }) => id === wanted)?.header ?? "";
  const chart = echarts.init(null, null, { renderer: "svg", ssr: true, width: WIDTH, height: 330 });
  chart.setOption({
    ...axes(objects.length, header(plot.value), plot.log),
    series: seriesOf(alongPanels(points, objects), header(plot.limit), text).filter(
      ({ data }) => data.length > 0,
    ),
  });
  const svg = chart.renderToSVGString();
  chart.dispose();
  return svg.replace("</svg>", `${panelLabels(objects)}</svg>`);
}

function pointOf(row: Row, { value, limit, unit, log }: Plot): Point | undefined {
  const drawable = (number: number | undefined) =>
    number !== undefined && Number.isFinite(number) && (!log || number > 0);
  const read = quantity(row[value], unit);
  if (!read || !drawable(read.value)) return undefined;
  const allowed = quantity(row[limit], unit)?.value;
  return {
    object: String(row.object),
    value: read.value,
    isAbove: read.bound === "above",
    verdict: verdictOf(row),
    limit: drawable(allowed) ? allowed : undefined,
  };
}

/** Points with their place along: those of a panel evenly spread over its width. */
function alongPanels(points: readonly Point[], objects: readonly string[]) {
  const place = new Map(objects.map((object, index) => [object, index]));
  return objects.flatMap((object) => {
    const group = points.filter((point) => point.object === object);
    return group.map((point, index) => ({
      ...point,
      x: (place.get(object) ?? 0) + 0.1 + (0.8 * (index + 1)) / (group.length + 1),
    }));
  });
}

const axes = (panels: number, title: string, log: boolean) => ({
  animation: false,
  textStyle: { fontFamily: FONT, color: INK },
  legend: { top: 0, itemGap: 18, textStyle: { fontSize: 12 } },
  grid: { left: LEFT, right: RIGHT, top: 52, bottom: 30 },
  xAxis: {
    type: "value" as const,
    min: 0,
    max: panels,
    interval: 1,
    axisLabel: { show: false },
    axisTick: { show: true },
    splitLine: { show: true, lineStyle: { color: PALE } },
  },
  yAxis: {
    type: log ? ("log" as const) : ("value" as const),
    name: title,
    nameTextStyle: { align: "left" as const, padding: [0, 0, 0, -70] },
    axisLabel: { formatter: (value: number) => value.toLocaleString("en") },
    splitLine: { show: true, lineStyle: { color: PALE } },
  },
});

function seriesOf(
  points: readonly (Point & { readonly x: number })[],
  limitTitle: string,
  { standing, page }: Messages["report"],
) {
  const scatter = (name: string, look: object, data: [number, number][]) => ({
    name,
    type: "scatter" as const,
    ...look,
    data,
  });
  const readings = (some: typeof points) =>
    some.map(({ x, value }): [number, number] => [x, value]);
  return [
    scatter(
      limitTitle,
      { symbol: "rect", symbolSize: [16, 3], itemStyle: { color: INK } },
      points.flatMap(({ x, limit }): [number, number][] =>
        limit === undefined ? [] : [[x, limit]],
      ),
    ),
    ...(["pass", "fail", "inconclusive"] as const).map((key) =>
      scatter(
        standing[key],
        { symbol: SYMBOLS[key], symbolSize: 8, itemStyle: { color: STANDING[key].fill } },
        readings(points.filter(({ verdict, isAbove }) => verdict === VERDICTS[key] && !isAbove)),
      ),
    ),
    scatter(
      page.above,
      {
        symbol: "triangle",
        symbolSize: 9,
        itemStyle: { color: "#ffffff", borderColor: INK, borderWidth: 1.5 },
      },
      readings(points.filter(({ isAbove }) => isAbove)),
    ),
  ];
}

const panelLabels = (objects: readonly string[]): string =>
  objects
    .map((object, index) => {
      const x = LEFT + ((index + 0.5) / objects.length) * (WIDTH - LEFT - RIGHT);
      return `<text x="${x}" y="318" font-size="12" text-anchor="middle" fill="${INK}" font-family="${FONT}">${escaped(object)}</text>`;
    })
    .join("");
