import Box from "@mui/material/Box";
import Typography from "@mui/material/Typography";
import { LineChart, ScatterChart } from "echarts/charts";
import { GridComponent, LegendComponent } from "echarts/components";
import * as echarts from "echarts/core";
import { SVGRenderer } from "echarts/renderers";
import { type ReactElement, useEffect, useRef } from "react";
import type { Picture as Drawn } from "../../report/pictures";
import { type Locale, useLocale } from "../locale";

echarts.use([LineChart, ScatterChart, GridComponent, LegendComponent, SVGRenderer]);

const HEIGHT = 260;
const SYMBOLS = ["circle", "diamond", "triangle", "rect"];

/** A picture of readings; its numbers stand in the evidence and the rows, for those who cannot see it. */
export default function Picture({ picture }: { picture: Drawn }): ReactElement {
  const place = useRef<HTMLDivElement>(null);
  const locale = useLocale();
  useEffect(() => {
    if (!place.current) return;
    const chart = echarts.init(place.current, null, { renderer: "svg", height: HEIGHT });
    chart.setOption(optionOf(picture, locale, getComputedStyle(place.current).color || "#1b2a33"));
    const watch = new ResizeObserver(() => chart.resize({ height: HEIGHT }));
    watch.observe(place.current);
    return () => {
      watch.disconnect();
      chart.dispose();
    };
  }, [picture, locale]);
  return (
    <Box component="figure" sx={{ m: 0 }} dir="ltr">
      <Typography component="figcaption" variant="body2">
        {picture.title}
      </Typography>
      <div
        ref={place}
        role="img"
        aria-label={`${picture.title}: ${picture.upward.header}`}
        style={{ width: "100%", height: HEIGHT }}
      />
    </Box>
  );
}

function optionOf({ names, along, upward, series }: Drawn, { number }: Locale, ink: string) {
  const grid = { lineStyle: { color: ink, opacity: 0.25 } };
  const axis = {
    axisLabel: { color: ink },
    axisLine: { lineStyle: { color: ink } },
    splitLine: grid,
  };
  return {
    animation: false,
    textStyle: { fontFamily: "Arial, Helvetica, sans-serif", color: ink },
    legend: { top: 0, textStyle: { color: ink, fontSize: 12 }, type: "plain" },
    grid: { left: 8, right: 12, top: 54, bottom: 8, containLabel: true },
    xAxis: names
      ? { ...axis, type: "category", data: [...names], splitLine: { show: false } }
      : {
          ...axis,
          type: along?.log ? "log" : "value",
          name: along?.header,
          nameLocation: "middle",
          nameGap: 24,
          axisLabel: { color: ink, formatter: number },
        },
    yAxis: {
      ...axis,
      type: upward.log ? "log" : "value",
      name: upward.header,
      nameTextStyle: { align: "left", color: ink },
      axisLabel: { color: ink, formatter: number },
    },
    series: series.map(({ name, line, points }, at) => ({
      name,
      type: line ? "line" : "scatter",
      data: points.map((point) => [...point]),
      symbol: line ? "none" : SYMBOLS[at % SYMBOLS.length],
      symbolSize: 10,
      color: ink,
      itemStyle:
        at % 2 === 1 && !line
          ? { color: "transparent", borderColor: ink, borderWidth: 2 }
          : { color: ink },
      lineStyle: { color: ink, width: 2, type: names ? "dashed" : at === 0 ? "solid" : "dashed" },
    })),
  };
}
