import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import type { Standing } from "../check/progress/matrix";
import type { Lineup } from "../lineup/lineup";
import type { Messages } from "../messages/messages";
import { Elevation } from "./Elevation";
import { TextContext } from "./text";

/** The front elevation as an SVG for a page on paper: with plain colours, and in the font of that page. */
export const drawingOf = (
  lineup: Pick<Lineup, "project" | "panels">,
  standingOf: (object: string) => Standing,
  text: Messages,
): string =>
  renderToStaticMarkup(
    createElement(TextContext, { value: text }, createElement(Elevation, { lineup, standingOf })),
  )
    .replaceAll(/var\(--[a-z]+, (#[0-9a-f]+)\)/g, "$1")
    .replaceAll("Arial, Helvetica, sans-serif", "Roboto");
