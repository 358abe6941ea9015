import { memo, type ReactElement } from "react";
import { busJoints, isCoupler } from "../lineup/busbar";
import type { Panel } from "../lineup/lineup";
import { hasPart, type UsualPart, undescribed } from "../lineup/undescribed";
import { useText } from "./text";

/** A panel is as wide as on the elevation above it. */
const WIDTH = 92;
const HEIGHT = 172;
const [BUS, LINK] = [16, 132];
/** The pane sets this by its mode; a page without it has ink on white paper. */
const INK = "var(--ink, #1b2a33)";
const LINE = { fill: "none", stroke: INK, strokeWidth: 1.6 };
const DASHED = { ...LINE, strokeWidth: 1.2, strokeDasharray: "3 3" };

/** Where each part stands along the way down, and how it is drawn about the middle of its panel. */
const PARTS: Readonly<Record<UsualPart, (x: number) => string>> = {
  breaker: (x) => `M${x - 9} 36h18v18h-18zl18 18m-18 0l18 -18`,
  currentTransformers: (x) => circle(x, 74, 8),
  protection: (x) => `M${x + 8} 74h10M${x + 18} 66h20v16h-20z`,
  voltageTransformers: (x) => `M${x} 98h-14${circle(x - 20, 98, 6)}${circle(x - 28, 98, 6)}`,
  cables: (x) => `M${x - 9} 138h18l-9 14z`,
};

const circle = (x: number, y: number, r: number) =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;

/** What the circuit leads to: a motor, a transformer. */
const ENDS: Readonly<Partial<Record<Panel["type"], (x: number) => string>>> = {
  "motor feeder": (x) => `${circle(x, 160, 8)}M${x - 4} 164v-8l4 5l4 -5v8`,
  "transformer feeder": (x) => `${circle(x, 157, 5)}${circle(x, 163, 5)}`,
};

const EARTH = (x: number) => `M${x} 118h-14v6m-8 0h16m-13 3h10m-7 3h4`;

/**
 * An impression of the lineup's single line, panel under panel of the elevation. What a panel of its type
 * usually has and this one is not said to have is dashed.
 */
export function SingleLine({
  panels,
  least,
}: {
  panels: readonly Panel[];
  /** Least width of a panel, px, below which the drawing scrolls. */
  least: number;
}): ReactElement {
  const text = useText().report;
  const width = panels.length * WIDTH + 2;
  return (
    <svg
      viewBox={`0 0 ${width} ${HEIGHT}`}
      role="img"
      aria-label={text.singleLine(panels.length)}
      style={{
        display: "block",
        width: "100%",
        maxWidth: width * 1.15,
        minWidth: panels.length * least,
        height: "auto",
      }}
      fontFamily="Arial, Helvetica, sans-serif"
      fontSize={10}
      textAnchor="middle"
    >
      <path d={buses(panels)} style={{ ...LINE, strokeWidth: 4 }} />
      <path d={links(panels)} style={LINE} />
      {panels.map((panel, at) => (
        <Way key={panel.designation} panel={panel} x={middle(at)} />
      ))}
    </svg>
  );
}

const middle = (at: number) => (at + 0.5) * WIDTH + 1;

/** A bar for each run of panels on one bus section. */
const buses = (panels: readonly Panel[]): string =>
  panels
    .map(({ section }, at) => {
      const isFirst = panels[at - 1]?.section !== section;
      const isLast = panels[at + 1]?.section !== section;
      return `M${at * WIDTH + (isFirst ? 8 : 0)} ${BUS}H${(at + 1) * WIDTH - (isLast ? 8 : 0)}`;
    })
    .join("");

/** From each bus coupler to the section that it couples to: to its riser, or up to the end of the other's bar. */
const links = (panels: readonly Panel[]): string =>
  busJoints({ panels })
    .filter(({ left, right }) => left.section !== right.section)
    .map(({ left, right }) => {
      const [coupler, other] = isCoupler(left) ? [left, right] : [right, left];
      const [from, to] = [panels.indexOf(coupler), panels.indexOf(other)];
      const near = middle(to) + Math.sign(from - to) * (WIDTH / 2 - 14);
      return `M${middle(from)} ${LINK}H${other.type === "riser" ? middle(to) : `${near}V${BUS}`}`;
    })
    .join("");

const isOut = ({ type }: Panel) => !["bus coupler", "tie", "riser", "metering"].includes(type);

/** The way of one panel from its busbar, with what it has and what it still lacks. */
const Way = memo(function Way({ panel, x }: { panel: Panel; x: number }) {
  const { singleLineOf, parts } = useText().report;
  const lacks = undescribed(panel);
  const has = (Object.keys(PARTS) as UsualPart[]).filter((part) => hasPart(panel, part));
  const bottom = panel.type === "metering" ? 98 : isOut(panel) ? 138 : LINK;
  const breaks = [...has, ...lacks].includes("breaker");
  return (
    <g>
      <title>
        {singleLineOf(
          panel.designation,
          lacks.map((part) => parts[part]),
        )}
      </title>
      <path
        d={[
          breaks ? `M${x} ${BUS}V36M${x} 54V${bottom}` : `M${x} ${BUS}V${bottom}`,
          ...has.map((part) => PARTS[part](x)),
          panel.earthingSwitch ? EARTH(x) : "",
          ENDS[panel.type]?.(x) ?? "",
        ].join("")}
        style={LINE}
      />
      <path d={lacks.map((part) => PARTS[part](x)).join("")} style={DASHED} />
    </g>
  );
});
