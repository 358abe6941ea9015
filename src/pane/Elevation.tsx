import type { ReactElement, ReactNode } from "react";
import type { Standing } from "../check/matrix";
import type { Panel } from "../lineup/lineup";
import { STANDING } from "./standing";

const WIDTH = 92;
const TOP = 34;
const HEIGHT = 214;
const BAND = 26;
/** The pane sets these by its mode; a page without them has ink on white paper. */
const INK = "var(--ink, #1b2a33)";
const PAPER = "var(--paper, #ffffff)";

interface Props {
  readonly lineup: {
    readonly project: { readonly name: string };
    readonly panels: readonly Panel[];
  };
  /** How a panel or bus section stands; without it, what it is stands in its place. */
  readonly standingOf?: (object: string) => Standing;
  /** Least width of a panel, px, below which the drawing scrolls; without it the drawing shrinks to fit. */
  readonly least?: number;
  /** Where a panel or section leads. */
  readonly hrefOf?: (object: string) => string;
  /** Called with the panel or section that is chosen. */
  readonly onChoose?: (object: string) => void;
  readonly chosen?: string;
}

/** The lineup as on a front-elevation drawing: a row of panels, each under its bus section, with its result in words. */
export function Elevation({
  lineup,
  standingOf,
  hrefOf,
  least,
  onChoose,
  chosen,
}: Props): ReactElement {
  const sections = runs(lineup.panels);
  const shown = (object: string, otherwise: string) =>
    standingOf ? STANDING[standingOf(object)] : { ...STANDING.none, word: otherwise };
  const width = lineup.panels.length * WIDTH + 2;
  return (
    <svg
      viewBox={`0 0 ${width} ${TOP + HEIGHT + BAND + 10}`}
      style={{
        width: "100%",
        maxWidth: width * 1.15,
        ...(least ? { minWidth: lineup.panels.length * least } : {}),
        height: "auto",
      }}
      fontFamily="Arial, Helvetica, sans-serif"
    >
      <title>{`Front elevation of ${lineup.project.name}: ${lineup.panels.length} panels`}</title>
      {sections.map(({ section, from, count }) => (
        <Linked
          key={`${section}-${from}`}
          object={section}
          href={hrefOf?.(section)}
          label={`${section}: ${shown(section, "").word}`}
          onChoose={onChoose}
          chosen={chosen === section}
        >
          <rect
            x={from * WIDTH + 4}
            y={6}
            width={count * WIDTH - 6}
            height={20}
            className="standing"
            fill={shown(section, "").fill}
            style={{ stroke: INK, strokeWidth: chosen === section ? 4 : 1 }}
          />
          <text
            x={(from + count / 2) * WIDTH}
            y={20}
            fontSize={12}
            fontWeight="bold"
            textAnchor="middle"
            className="standing-word"
            fill={shown(section, "").ink}
          >
            {[section, shown(section, "").word].filter(Boolean).join(": ")}
          </text>
        </Linked>
      ))}
      {lineup.panels.map((panel, index) => (
        <Linked
          key={panel.designation}
          object={panel.designation}
          href={hrefOf?.(panel.designation)}
          onChoose={onChoose}
          chosen={chosen === panel.designation}
          label={`${panel.designation} ${panel.name ?? panel.type}: ${shown(panel.designation, panel.type).word}`}
        >
          <Front
            panel={panel}
            x={index * WIDTH + 1}
            shown={shown(panel.designation, panel.type)}
            chosen={chosen === panel.designation}
          />
        </Linked>
      ))}
    </svg>
  );
}

/** A part of the drawing: a link, a button, or neither. */
function Linked({
  object,
  href,
  label,
  onChoose,
  chosen,
  children,
}: {
  object: string;
  href: string | undefined;
  label: string;
  onChoose: ((object: string) => void) | undefined;
  chosen: boolean;
  children: ReactNode;
}) {
  if (href)
    return (
      <a href={href} aria-label={label}>
        {children}
      </a>
    );
  if (!onChoose)
    return (
      <g>
        <title>{label}</title>
        {children}
      </g>
    );
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no button element
    <g
      role="button"
      tabIndex={0}
      aria-label={label}
      aria-pressed={chosen}
      style={{ cursor: "pointer" }}
      onClick={() => onChoose(object)}
      onKeyDown={(event) => {
        if (event.key !== "Enter" && event.key !== " ") return;
        event.preventDefault();
        onChoose(object);
      }}
    >
      {children}
    </g>
  );
}

/** One panel from the front: low-voltage compartment, circuit-breaker or other door, cable compartment, result. */
function Front({
  panel,
  x,
  shown: { word, fill, ink },
  chosen,
}: {
  panel: Panel;
  x: number;
  shown: { word: string; fill: string; ink: string };
  chosen: boolean;
}) {
  const middle = x + WIDTH / 2;
  const line = { style: { fill: "none", stroke: INK, strokeWidth: 1.2 } };
  const words = wrapped(panel.name ?? panel.type, 13);
  return (
    <>
      <rect
        x={x}
        y={TOP}
        width={WIDTH}
        height={HEIGHT}
        style={{ fill: PAPER, stroke: INK, strokeWidth: chosen ? 5 : 2 }}
      />
      <rect x={x + 6} y={TOP + 6} width={WIDTH - 12} height={58} {...line} />
      <text
        x={middle}
        y={TOP + 24}
        fontSize={14}
        fontWeight="bold"
        textAnchor="middle"
        style={{ fill: INK }}
      >
        {panel.designation}
      </text>
      {words.map((word, index) => (
        <text
          key={word}
          x={middle}
          y={TOP + 40 + index * 12}
          fontSize={10}
          textAnchor="middle"
          style={{ fill: INK }}
        >
          {word}
        </text>
      ))}
      <rect x={x + 6} y={TOP + 70} width={WIDTH - 12} height={76} {...line} />
      {panel.breaker ? (
        <>
          <rect x={middle - 13} y={TOP + 82} width={26} height={26} {...line} />
          <path
            d={`M${middle - 13} ${TOP + 82}l26 26M${middle + 13} ${TOP + 82}l-26 26`}
            {...line}
          />
          <text x={middle} y={TOP + 124} fontSize={10} textAnchor="middle" style={{ fill: INK }}>
            {panel.breaker.designation} {panel.breaker.medium}
          </text>
          <text x={middle} y={TOP + 137} fontSize={10} textAnchor="middle" style={{ fill: INK }}>
            {panel.breaker.ratedA} A
          </text>
        </>
      ) : (
        <text x={middle} y={TOP + 112} fontSize={10} textAnchor="middle" style={{ fill: INK }}>
          {panel.type}
        </text>
      )}
      <rect x={x + 6} y={TOP + 152} width={WIDTH - 12} height={HEIGHT - 158} {...line} />
      <path
        d={`M${x + 12} ${TOP + HEIGHT - 12}h${WIDTH - 24}`}
        style={{ stroke: INK, strokeWidth: 3 }}
      />
      <rect
        x={x}
        y={TOP + HEIGHT}
        width={WIDTH}
        height={BAND}
        className="standing"
        fill={fill}
        style={{ stroke: INK, strokeWidth: 2 }}
      />
      <text
        x={middle}
        y={TOP + HEIGHT + 17}
        fontSize={word.length > 12 ? 9 : 12}
        fontWeight="bold"
        textAnchor="middle"
        className="standing-word"
        fill={ink}
      >
        {word}
      </text>
    </>
  );
}

/** Neighbouring panels of one bus section. */
function runs(panels: readonly Panel[]) {
  const found: { section: string; from: number; count: number }[] = [];
  panels.forEach(({ section }, index) => {
    const last = found.at(-1);
    if (last?.section === section) last.count++;
    else found.push({ section, from: index, count: 1 });
  });
  return found;
}

/** At most two lines of a length, broken between words. */
function wrapped(text: string, length: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && `${last} ${word}`.length <= length)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines
    .slice(0, 2)
    .map((line) => (line.length > length ? `${line.slice(0, length - 1)}…` : line));
}
