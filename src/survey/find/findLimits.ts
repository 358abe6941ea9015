import type { Unit } from "../../quantities/units";
import type { Beside, Draft, Line } from "../draft";
import { type Cell, quantityIn, type SheetView } from "../read/cells";
import { boundInTitle } from "../understand/conceptOfTitle";
import { unitIn } from "../understand/unitIn";
import { conceptOf, hasWord } from "../words/sheetWords";
import type { Concept } from "../words/words";
import type { Limit, SurveyColumn } from "./block";
import { withNumber } from "./findBeside";
import { factsIn } from "./findFacts";
import { LIMIT_LINES } from "./findLines";
import { classOf } from "./kindOf";
import { isAggregate } from "./nameColumns";

/** On which side the limit of a kind lies where its title does not say. */
const LEAST: readonly string[] = ["insulation", "control", "cable", "indexCurve"];
const sideBy = (kind: string): Limit["side"] => (LEAST.includes(kind) ? "least" : "most");

const sideOf = (concept: Concept, cell: Cell, kind: string): Limit["side"] => {
  const sign = /^\s*([<>≤≥])/.exec(cell.text)?.[1];
  if (sign) return /[>≥]/.test(sign) ? "least" : "most";
  const [least, most] = [hasWord(cell.text, "atLeast"), hasWord(cell.text, "atMost")];
  if (least !== most) return least ? "least" : "most";
  return concept === "minimum" ? "least" : concept === "maximum" ? "most" : sideBy(kind);
};

/** Two bounds in one cell: "40–60". */
const BOTH =
  /^(\d+(?:[.,]\d+)?)\s?(?:-|–|…|\.\.\.|to|bis|à|a|hasta|até|إلى)\s?(\d+(?:[.,]\d+)?)(?:\s|$)/u;

/** A value with how far it may be missed: "2300 ±3", "70 ± 10 %". */
const BAND = /(\d+(?:[.,]\d+)?)\s?[^\d\s±]{0,6}\s?(?:±|\+\s?\/\s?[-−])\s?(\d+(?:[.,]\d+)?)\s?(%)?/u;

const bandIn = (text: string, unit: Unit | undefined, address: string): Limit[] => {
  const [, middle = "", digits = "", share] = BAND.exec(text.slice(0, 300)) ?? [];
  const [value, width] = [quantityIn(middle)?.number, quantityIn(digits)?.number];
  if (value === undefined || width === undefined) return [];
  const off = share === undefined ? width : (value * width) / 100;
  return [
    { side: "least", number: value - off, unit, address },
    { side: "most", number: value + off, unit, address },
  ];
};

const boundsIn = (cell: Cell, concept: Concept, kind: string, unit: Unit | undefined): Limit[] => {
  const [, low = "", high = ""] = BOTH.exec(cell.text) ?? [];
  const [least, most] = [quantityIn(low)?.number, quantityIn(high)?.number];
  const { address, number } = cell;
  const band = bandIn(cell.text, unit, address);
  if (band.length > 0) return band;
  if (least !== undefined && most !== undefined && least < most)
    return [
      { side: "least", number: least, unit, address },
      { side: "most", number: most, unit, address },
    ];
  return number === undefined
    ? []
    : [{ side: sideOf(concept, cell, kind), number, unit: cell.unit ?? unit, address }];
};

/** Limits that a line's own cells state. */
export const limitsBeside = (beside: Beside, unit: Unit | undefined, kind: string): Limit[] =>
  (["minimum", "maximum", "limit", "required"] as const).flatMap((concept): Limit[] => {
    const cell = beside[concept];
    if (!cell) return [];
    const isBound = /^\s*[<>≤≥]/.test(cell.text) || BOTH.test(cell.text);
    return concept === "required" && !isBound ? [] : boundsIn(cell, concept, kind, unit);
  });

/** Whether a cell is worked out as the highest or lowest of others: it sums up readings, and bounds none. */
const isExtreme = ({ formula }: Cell): boolean => formula !== undefined && isAggregate(formula);

/** Kinds whose readings shall come to a value, from either side: what is required of them bounds none by itself. */
const AIMED: readonly string[] = [
  "torque",
  "currentTransformer",
  "voltageTransformer",
  "metering",
  "protection",
];

/** Whether a cell states the value that a reading shall come to, and no bound. */
const isAim = (concept: Concept, kind: string, { text }: Cell): boolean =>
  concept === "required" &&
  AIMED.includes(kind) &&
  !/^\s*[<>≤≥]/.test(text) &&
  !BOTH.test(text) &&
  !BAND.test(text.slice(0, 300));

/** The value that the readings of a column shall come to, in a line of its own: "Required | 70 | 40". */
export const aimAside = (
  view: SheetView,
  aside: readonly Line[],
  { at }: SurveyColumn,
  kind: string,
): Cell | undefined => {
  const aims = aside.flatMap(({ row, cells: [named] }) => {
    const shown = view.shown(row, at);
    const isRequired =
      named !== undefined && shown !== named && conceptOf(named.text) === "required";
    return isRequired && shown && isAim("required", kind, shown)
      ? [withNumber(shown, "required", unitIn(named.text))]
      : [];
  });
  return aims.length === 1 ? aims[0] : undefined;
};

/** Limits in lines of their own, for the readings of their columns. */
export const limitsAside = (
  view: SheetView,
  aside: readonly Line[],
  column: SurveyColumn,
  unit: Unit | undefined,
  kind: string,
): Limit[] =>
  aside.flatMap((line): Limit[] => {
    const [named] = line.cells;
    const concept = named && conceptOf(named.text);
    const shown = view.shown(line.row, column.at);
    if (
      !named ||
      concept === undefined ||
      !LIMIT_LINES.includes(concept) ||
      !shown ||
      shown === named ||
      isExtreme(shown) ||
      isAim(concept, kind, shown)
    )
      return [];
    const cell = withNumber(shown, concept, unitIn(named.text));
    return boundsIn(cell, concept, kind, unitIn(named.text) ?? unit);
  });

/** Bounds that a title states for what stands under it: "Contact resistance, µΩ (max 60)". */
export const limitsInTitle = (
  { view, table }: Draft,
  { at, title }: SurveyColumn,
  unit: Unit | undefined,
): Limit[] => {
  const text = boundInTitle(title);
  const cell = text === undefined ? undefined : view.shown(table.head, at);
  const band = cell && text !== undefined ? bandIn(text, unit, cell.address) : [];
  if (band.length > 0) return band;
  return cell && text !== undefined
    ? factsIn({ ...cell, text }, unit).limits.filter(
        (limit) => !limit.unit || !unit || classOf(limit.unit) === classOf(unit),
      )
    : [];
};
