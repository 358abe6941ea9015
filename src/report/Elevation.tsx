import { memo, type ReactElement, type ReactNode } from "react";
import type { Standing } from "../check/progress/matrix";
import type { Panel } from "../lineup/lineup";
import { STANDING } from "./standing";
import { useText } from "./text";

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
  const text = useText().report;
  const sections = runs(lineup.panels);
  const shown = (object: string) => (standingOf ? standingOf(object) : undefined);
  const width = lineup.panels.length * WIDTH + 2;
  return (
    <svg
      viewBox={`0 0 ${width} ${TOP + HEIGHT + BAND + 10}`}
      style={{
        width: "100%",
        maxWidth: width * 1.15,
        ...(least ? { minWidth: lineup.panels.length * least } : {}),
        height: "auto",
        fill: INK,
        stroke: "none",
      }}
      fontFamily="Arial, Helvetica, sans-serif"
      fontSize={10}
      textAnchor="middle"
    >
      <title>{text.drawing(lineup.project.name, lineup.panels.length)}</title>
      {sections.map(({ section, from, count }) => (
        <Section
          key={`${section}-${from}`}
          section={section}
          from={from}
          count={count}
          standing={shown(section)}
          href={hrefOf?.(section)}
          onChoose={onChoose}
          chosen={chosen === section}
        />
      ))}
      {lineup.panels.map((panel, index) => (
        <Front
          key={panel.designation}
          panel={panel}
          x={index * WIDTH + 1}
          standing={shown(panel.designation)}
          href={hrefOf?.(panel.designation)}
          onChoose={onChoose}
          chosen={chosen === panel.designation}
        />
      ))}
      <path
        d={lineup.panels
          .map(({ breaker }, index) => doors(index * WIDTH + 1, breaker !== undefined))
          .join("")}
        style={{ fill: "none", stroke: INK, strokeWidth: 1.2, pointerEvents: "none" }}
      />
    </svg>
  );
}

/** How one part of the drawing stands and where it leads. */
interface DrawnPart {
  /** Without it, what the part is stands in its place. */
  readonly standing: Standing | undefined;
  readonly href: string | undefined;
  readonly onChoose: ((object: string) => void) | undefined;
  readonly chosen: boolean;
}

/** The word and colours of a standing; without one, what stands in its place. */
const useStanding = (standing: Standing | undefined, otherwise: string) => {
  const words = useText().report.standing;
  return standing
    ? { ...STANDING[standing], word: words[standing] }
    : { ...STANDING.none, word: otherwise };
};

/** The bar of a bus section above its panels. */
const Section = memo(function Section({
  section,
  from,
  count,
  standing,
  ...link
}: DrawnPart & { section: string; from: number; count: number }) {
  const { word, fill, ink } = useStanding(standing, "");
  return (
    <Linked object={section} label={`${section}: ${word}`} {...link}>
      <rect
        x={from * WIDTH + 4}
        y={6}
        width={count * WIDTH - 6}
        height={20}
        className="standing"
        fill={fill}
        style={{ stroke: INK, strokeWidth: link.chosen ? 4 : 1 }}
      />
      <text
        x={(from + count / 2) * WIDTH}
        y={20}
        fontSize={12}
        fontWeight="bold"
        className="standing-word"
        fill={ink}
      >
        {[section, word].filter(Boolean).join(": ")}
      </text>
    </Linked>
  );
});

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
const Front = memo(function Front({
  panel,
  x,
  standing,
  ...link
}: DrawnPart & { panel: Panel; x: number }) {
  const { word, fill, ink } = useStanding(standing, panel.type);
  const middle = x + WIDTH / 2;
  const words = wrapped(panel.name ?? panel.type, 13);
  const text = (line: string, y: number) => (
    <text key={y} x={middle} y={y}>
      {line}
    </text>
  );
  return (
    <Linked
      object={panel.designation}
      label={`${panel.designation} ${panel.name ?? panel.type}: ${word}`}
      {...link}
    >
      <rect
        x={x}
        y={TOP}
        width={WIDTH}
        height={HEIGHT}
        style={{ fill: PAPER, stroke: INK, strokeWidth: link.chosen ? 5 : 2 }}
      />
      <text x={middle} y={TOP + 24} fontSize={14} fontWeight="bold">
        {panel.designation}
      </text>
      {words.map((line, index) => text(line, TOP + 40 + index * 12))}
      {panel.breaker ? (
        <>
          {text(`${panel.breaker.designation} ${panel.breaker.medium ?? ""}`, TOP + 124)}
          {text(`${panel.breaker.ratedA} A`, TOP + 137)}
        </>
      ) : (
        text(panel.type, TOP + 112)
      )}
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
        className="standing-word"
        fill={ink}
      >
        {word}
      </text>
    </Linked>
  );
});

/** The doors of a panel, its breaker where it has one, and the earth bar at its foot. */
function doors(x: number, breaker: boolean): string {
  const door = (y: number, height: number) =>
    `M${x + 6} ${y}h${WIDTH - 12}v${height}h${12 - WIDTH}z`;
  const middle = x + WIDTH / 2;
  const box = `M${middle - 13} ${TOP + 82}h26v26h-26zl26 26m-26 0l26 -26`;
  return [
    door(TOP + 6, 58),
    door(TOP + 70, 76),
    breaker ? box : "",
    door(TOP + 152, HEIGHT - 158),
    // The earth bar, as a line of some thickness.
    `M${x + 12} ${TOP + HEIGHT - 13}h${WIDTH - 24}v2h${24 - WIDTH}z`,
  ].join("");
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
