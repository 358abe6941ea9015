import { LineChart, ScatterChart } from "echarts/charts";
import { GridComponent, LegendComponent, TitleComponent } from "echarts/components";
import * as echarts from "echarts/core";
import { SVGRenderer } from "echarts/renderers";
import type { Picture, PicturePoint } from "./pictures";
import { STANDING } from "./standing";

echarts.use([LineChart, ScatterChart, GridComponent, LegendComponent, TitleComponent, SVGRenderer]);

/** How a picture is to look: how wide, in what colour, and how its numbers are written. */
export interface PictureLook {
  /** In pixels; a picture of many names is wider than is asked for. */
  readonly width: number;
  readonly ink: string;
  readonly number: (value: number) => string;
  /** Whether its title and the quantity upward stand in it, rather than beside it. */
  readonly titled?: boolean;
}

const FONT = "Arial, Helvetica, sans-serif";
const SMALL = 7;
/** Points by what they tell, in the colours of results. */
const LOOKS: Readonly<
  Record<NonNullable<Picture["series"][number]["look"]>, (ink: string) => object>
> = {
  pass: () => result("pass", "circle"),
  fail: () => result("fail", "diamond"),
  inconclusive: () => result("inconclusive", "rect"),
  above: (ink) => ({
    symbol: "triangle",
    symbolSize: SMALL,
    itemStyle: { color: "transparent", borderColor: ink, borderWidth: 1.5 },
  }),
};

const result = (key: keyof typeof STANDING, symbol: string) => {
  const { fill } = STANDING[key];
  return { symbol, symbolSize: SMALL, color: fill, itemStyle: { color: fill } };
};

const SYMBOLS = ["circle", "diamond", "triangle", "rect"];

/** A limit in the legend, drawn as it is in the picture. */
const DASHES = "path://M0 0h8v2h-8zM12 0h8v2h-8z";

/** A letter and a line of the picture's text, px, with room to spare. */
const [LETTER, LINE] = [7, 20];
/** What stands beside the names, and before a name in the legend, px. */
const [BESIDE, MARK] = [70, 40];
const PLOT_HEIGHT = 190;
const TITLE = 44;

const longest = (texts: readonly string[]) => Math.max(0, ...texts.map(({ length }) => length));

/** Where everything of a picture goes, so that no text of it is cut off. */
export function pictureLayout({ names = [], series }: Picture, look: PictureLook) {
  const isTurned = (longest(names) + 1) * LETTER * names.length > look.width - BESIDE;
  const width = isTurned ? Math.max(look.width, names.length * LINE + BESIDE) : look.width;
  const legend = series
    .filter(({ shape }) => shape !== "joins")
    .map(({ name, shape }) => (shape === "limit" ? { name, icon: DASHES } : { name }));
  const lines = legend.reduce(
    ({ rows, used }, { name }) => {
      const wide = name.length * LETTER + MARK;
      return used + wide > look.width
        ? { rows: rows + 1, used: wide }
        : { rows, used: used + wide };
    },
    { rows: 1, used: 0 },
  ).rows;
  const top = (look.titled ? TITLE : 0) + lines * LINE + 14;
  const below = isTurned ? longest(names) * LETTER : LINE;
  return { isTurned, width, legend, top, height: top + PLOT_HEIGHT + below + LINE };
}

/** A picture as the chart library takes it. */
export function pictureOption(picture: Picture, look: PictureLook) {
  const { names, isSpread, along, upward, series, title } = picture;
  const { ink, number, titled } = look;
  const { isTurned, legend, top } = pictureLayout(picture, look);
  const axis = {
    axisLabel: { color: ink, formatter: number },
    axisLine: { lineStyle: { color: ink } },
    splitLine: { lineStyle: { color: ink, opacity: 0.25 } },
  };
  return {
    animation: false,
    textStyle: { fontFamily: FONT, color: ink },
    ...(titled
      ? {
          title: {
            text: title,
            subtext: upward.header,
            textStyle: { color: ink, fontSize: 14 },
            subtextStyle: { color: ink, fontSize: 12 },
          },
        }
      : {}),
    legend: {
      top: titled ? TITLE : 0,
      left: 0,
      type: "plain",
      selectedMode: false,
      data: legend,
      textStyle: { color: ink, fontSize: 12 },
    },
    // Titles and labels of the axes stand within these bounds as well.
    grid: {
      left: 8,
      right: 16,
      top,
      bottom: 4,
      outerBoundsMode: "same" as const,
      outerBoundsContain: "all" as const,
    },
    xAxis: names
      ? [
          {
            ...axis,
            type: "category",
            data: [...names],
            splitLine: { show: isSpread === true, lineStyle: { color: ink, opacity: 0.15 } },
            axisLabel: { color: ink, interval: 0, rotate: isTurned ? 90 : 0 },
          },
          // Limits are as wide as their names, which an axis of names cannot say.
          { type: "value", min: 0, max: names.length, show: false },
        ]
      : [
          {
            ...axis,
            type: along?.log ? "log" : "value",
            name: along?.header,
            nameLocation: "middle",
            nameGap: 24,
          },
        ],
    yAxis: { ...axis, type: upward.log ? "log" : "value" },
    series: series.map((one, at) => ({
      name: one.name,
      color: ink,
      ...drawn(one, at, ink, names !== undefined && !isSpread),
      ...(isSpread ? { xAxisIndex: 1 } : {}),
      ...(one.look ? LOOKS[one.look](ink) : {}),
    })),
  };
}

function drawn(
  { shape, points }: Picture["series"][number],
  at: number,
  ink: string,
  isNamed: boolean,
) {
  const hollow = { color: "transparent", borderColor: ink, borderWidth: 2 };
  const itemStyle = at % 2 === 1 ? hollow : { color: ink };
  const symbol = SYMBOLS[at % SYMBOLS.length];
  const dashed = { color: ink, width: 2, type: "dashed" as const };
  switch (shape) {
    case "points":
      return { type: "scatter", symbol, symbolSize: 10, itemStyle, data: points.map(asData) };
    case "curve": {
      const lineStyle = at === 0 ? { color: ink, width: 2 } : dashed;
      return {
        type: "line",
        symbol,
        symbolSize: 7,
        showAllSymbol: true,
        itemStyle,
        lineStyle,
        data: points.map(asData),
      };
    }
    case "joins":
      return {
        type: "line",
        symbol: "none",
        silent: true,
        lineStyle: { color: ink, width: 1 },
        data: points.map(asData),
      };
    case "limit":
      return {
        type: "line",
        symbol: "none",
        silent: true,
        lineStyle: dashed,
        ...(isNamed
          ? { xAxisIndex: 1, data: steps(points).map(asData) }
          : { data: points.map(asData) }),
      };
  }
}

const asData = (point: PicturePoint) =>
  point === undefined ? [null, null] : { value: [point[0], point[1]], row: point[2] };

/** Limits as steps, each as wide as its name; the pen is lifted where a name has none, or a second one. */
export const steps = (points: readonly PicturePoint[]): PicturePoint[] => {
  const sorted = points
    .filter((point) => point !== undefined)
    .sort(([one], [other]) => one - other);
  return sorted.flatMap((point, index): PicturePoint[] => {
    const [x, y] = point;
    const before = sorted[index - 1];
    const goesOn = before === undefined || before[0] === x - 1;
    return [...(goesOn ? [] : [undefined]), [x, y], [x + 1, y]];
  });
};

/** A picture as an SVG file, for paper: in ink on white, with its title. */
export function pictureSvg(picture: Picture, number: PictureLook["number"]): string {
  return drawnSvg(picture, { width: 720, ink: "#1b2a33", number, titled: true }, "#ffffff");
}

/** A picture as an SVG drawing; on a ground of its own where one is given. */
export function drawnSvg(picture: Picture, look: PictureLook, ground?: string): string {
  const { width, height } = pictureLayout(picture, look);
  const chart = echarts.init(null, null, { renderer: "svg", ssr: true, width, height });
  const backgroundColor = ground ?? "transparent";
  chart.setOption({ ...pictureOption(picture, look), backgroundColor });
  const svg = chart.renderToSVGString();
  chart.dispose();
  return svg;
}

export { echarts };
