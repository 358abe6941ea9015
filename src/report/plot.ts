import { ScatterChart } from "echarts/charts";
import { AriaComponent, GridComponent, LegendComponent } from "echarts/components";
import * as echarts from "echarts/core";
import { SVGRenderer } from "echarts/renderers";
import type { JudgedTable } from "../check/context";
import { verdictOf } from "../records/kind";
import { quantity } from "../records/quantity";
import { STANDING } from "./standing";

echarts.use([ScatterChart, GridComponent, LegendComponent, AriaComponent, SVGRenderer]);

const LOOK = [
  { name: "Pass", verdict: "Pass", symbol: "circle", color: STANDING.pass.fill },
  { name: "Fail", verdict: "Fail", symbol: "diamond", color: STANDING.fail.fill },
  {
    name: "Inconclusive",
    verdict: "Inconclusive",
    symbol: "rect",
    color: STANDING.inconclusive.fill,
  },
] as const;

const [WIDTH, LEFT, RIGHT] = [1000, 92, 16];

/**
 * Readings of a table against their limits, panel by panel, as an SVG drawing. A reading known only to
 * lie above its number is drawn as an arrow head. Undefined where there is nothing to draw.
 *
 * @param order panels and sections in the order in which they stand
 */
export function plotSvg(
  { kind, judged }: JudgedTable,
  order: readonly string[],
): string | undefined {
  if (!kind.plot) return undefined;
  const { value, limit, unit, log } = kind.plot;
  const drawable = (number: number | undefined) =>
    number !== undefined && Number.isFinite(number) && (!log || number > 0);
  const points = judged.flatMap((row) => {
    const read = quantity(row[value], unit);
    const allowed = quantity(row[limit], unit)?.value;
    return read && drawable(read.value)
      ? [
          {
            object: String(row.object),
            at: read.value,
            above: read.bound === "above",
            verdict: verdictOf(row),
            limit: drawable(allowed) ? allowed : undefined,
          },
        ]
      : [];
  });
  if (points.length === 0) return undefined;
  const present = new Set(judged.map((row) => String(row.object)));
  const objects = [...new Set([...order, ...present])].filter((object) => present.has(object));
  const index = new Map(objects.map((object, at) => [object, at]));
  const counts = new Map<string, number>();
  const total = new Map<string, number>();
  for (const { object } of points) total.set(object, (total.get(object) ?? 0) + 1);
  const placed = points.map((point) => {
    const already = counts.get(point.object) ?? 0;
    counts.set(point.object, already + 1);
    const share = (already + 1) / ((total.get(point.object) ?? 1) + 1);
    return { ...point, x: (index.get(point.object) ?? 0) + 0.1 + 0.8 * share };
  });
  const header = kind.columns.find(({ id }) => id === value)?.header ?? "";
  const limitHeader = kind.columns.find(({ id }) => id === limit)?.header ?? "";
  const chart = echarts.init(null, null, { renderer: "svg", ssr: true, width: WIDTH, height: 330 });
  chart.setOption({
    animation: false,
    textStyle: { fontFamily: "Arial, Helvetica, sans-serif", color: "#1b2a33" },
    legend: { top: 0, itemGap: 18, textStyle: { fontSize: 12 } },
    grid: { left: LEFT, right: RIGHT, top: 52, bottom: 30 },
    xAxis: {
      type: "value",
      min: 0,
      max: objects.length,
      interval: 1,
      axisLabel: { show: false },
      axisTick: { show: true },
      splitLine: { show: true, lineStyle: { color: "#d5dcdf" } },
    },
    yAxis: {
      type: log ? "log" : "value",
      name: header,
      nameTextStyle: { align: "left", padding: [0, 0, 0, -70] },
      axisLabel: { formatter: (at: number) => at.toLocaleString("en") },
      splitLine: { show: true, lineStyle: { color: "#d5dcdf" } },
    },
    series: [
      {
        name: limitHeader,
        type: "scatter",
        symbol: "rect",
        symbolSize: [16, 3],
        itemStyle: { color: "#1b2a33" },
        data: placed.flatMap(({ x, limit: allowed }) =>
          allowed === undefined ? [] : [[x, allowed]],
        ),
      },
      ...LOOK.map(({ name, verdict, symbol, color }) => ({
        name,
        type: "scatter" as const,
        symbol,
        symbolSize: 8,
        itemStyle: { color },
        data: placed
          .filter((point) => point.verdict === verdict && !point.above)
          .map(({ x, at }) => [x, at]),
      })),
      {
        name: "above its number",
        type: "scatter",
        symbol: "triangle",
        symbolSize: 9,
        itemStyle: { color: "#ffffff", borderColor: "#1b2a33", borderWidth: 1.5 },
        data: placed.filter(({ above }) => above).map(({ x, at }) => [x, at]),
      },
    ].filter(({ data }) => data.length > 0),
  });
  const svg = chart.renderToSVGString();
  chart.dispose();
  const labels = objects
    .map(
      (object, at) =>
        `<text x="${LEFT + ((at + 0.5) / objects.length) * (WIDTH - LEFT - RIGHT)}" y="318" font-size="12" text-anchor="middle" fill="#1b2a33" font-family="Arial, Helvetica, sans-serif">${xml(object)}</text>`,
    )
    .join("");
  return svg.replace("</svg>", `${labels}</svg>`);
}

const xml = (text: string) =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
