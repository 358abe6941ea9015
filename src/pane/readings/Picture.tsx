import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Typography from "@mui/material/Typography";
import { type ReactElement, useEffect, useRef, useState } from "react";
import { echarts, pictureLayout, pictureOption, pictureSvg } from "../../report/pictureOption";
import type { Picture as Drawn } from "../../report/pictures";
import { useText } from "../../report/text";
import { useLocale } from "../locale";
import { saveFile } from "../saveFile";
import { copyPicture } from "./copyPicture";

/** A picture of readings; its numbers stand in the evidence and the rows, for those who cannot see it. */
export default function Picture({
  picture,
  toRow,
}: {
  picture: Drawn;
  /** Shows a row of the table. */
  toRow: (row: number) => void;
}): ReactElement {
  const text = useText().plot;
  const place = useRef<HTMLDivElement>(null);
  const { number } = useLocale();
  const [told, setTold] = useState<string>();
  const show = useRef(toRow);
  show.current = toRow;
  useEffect(() => {
    const element = place.current;
    if (!element) return;
    const ink = getComputedStyle(element).color || "#1b2a33";
    const room = () => Math.max(1, element.parentElement?.clientWidth ?? 1);
    const layout = () => pictureLayout(picture, { width: room(), ink, number });
    const chart = echarts.init(element, null, { renderer: "svg", ...sizeOf(layout()) });
    const draw = () => {
      chart.resize(sizeOf(layout()));
      chart.setOption(pictureOption(picture, { width: room(), ink, number }), true);
    };
    draw();
    chart.on("click", ({ data }) => {
      const { row } = (data ?? {}) as { row?: number };
      if (row !== undefined) show.current(row);
    });
    const watch = new ResizeObserver(draw);
    if (element.parentElement) watch.observe(element.parentElement);
    return () => {
      watch.disconnect();
      chart.dispose();
    };
  }, [picture, number]);
  const copy = async () =>
    setTold((await copyPicture(pictureSvg(picture, number))) ? text.copied : text.cannotCopy);
  return (
    <Box component="figure" sx={{ m: 0 }} dir="ltr">
      <Typography component="figcaption" variant="body2">
        <strong>{picture.title}</strong>
        <br />
        {picture.upward.header}
      </Typography>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section aria-label={picture.title} tabIndex={0} style={{ overflowX: "auto" }}>
        <div ref={place} role="img" aria-label={`${picture.title}: ${picture.upward.header}`} />
      </section>
      <Typography variant="body2" color="text.secondary">
        {text.toRow}
      </Typography>
      <Box sx={{ display: "flex", flexWrap: "wrap", gap: 0.5 }}>
        <Button size="small" onClick={copy}>
          {text.copy}
        </Button>
        <Button
          size="small"
          onClick={() =>
            saveFile(
              `${picture.title.replace(/[^\p{L}\p{N}]+/gu, "-")}.svg`,
              pictureSvg(picture, number),
              "image/svg+xml",
            )
          }
        >
          {text.save}
        </Button>
      </Box>
      {told && (
        <Typography variant="body2" role="status">
          {told}
        </Typography>
      )}
    </Box>
  );
}

const sizeOf = ({ width, height }: { width: number; height: number }) => ({ width, height });
