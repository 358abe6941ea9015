import { type Unit, unitSize } from "../../quantities/units";
import type { Cell } from "../read/cells";
import { plain } from "../words/sheetWords";
import type { Concept } from "../words/words";
import type { SurveyColumn } from "./block";
import { classOf } from "./kindOf";
import { sharesName } from "./shareNames";

type Under = (at: number) => readonly Cell[];

const BOUNDS: readonly (Concept | undefined)[] = ["minimum", "maximum", "limit"];

const isBound = ({ concept, position, panel }: SurveyColumn): boolean =>
  BOUNDS.includes(concept) && position === undefined && panel === undefined;

const isReading = ({ concept, numbers, computed, unit }: SurveyColumn): boolean =>
  numbers && !computed && (concept === "reading" || (concept === undefined && unit !== undefined));

const sortOf = (unit: Unit | undefined) => unit && classOf(unit);

/** Whether a bound says by its words which column it is for. */
const isNamed = (columns: readonly SurveyColumn[], bound: SurveyColumn): boolean =>
  columns.some(
    (one) => one !== bound && !BOUNDS.includes(one.concept) && sharesName(bound.title, one.title),
  );

/** Readings between a bound and the one before it of the same side, those right before it first. */
const before = (
  readings: readonly SurveyColumn[],
  bounds: readonly SurveyColumn[],
  { at, concept }: SurveyColumn,
): SurveyColumn[] => {
  const last = Math.max(
    -1,
    ...bounds.filter((one) => one.concept === concept && one.at < at).map((one) => one.at),
  );
  return readings.filter((one) => one.at < at && one.at > last).toReversed();
};

const firstOf = (title: string): string => plain(title.slice(0, 100)).split(" ")[0] ?? "";

const ASKED: readonly (Concept | undefined)[] = [...BOUNDS, "required"];

/** The readings without a bound of their own name, where others have one: "Pressure | Min | Max | Alarm came | Alarm set". */
const withoutOwn = (
  columns: readonly SurveyColumn[],
  bound: SurveyColumn,
): readonly SurveyColumn[] | undefined => {
  const asked = columns.filter((one) => ASKED.includes(one.concept) && one !== bound);
  const readings = columns.filter(
    ({ concept, numbers, unit }) =>
      numbers && (concept === "reading" || (concept === undefined && unit !== undefined)),
  );
  const hasOwn = (reading: SurveyColumn) =>
    asked.some(
      (one) =>
        one.at > reading.at &&
        (sharesName(one.title, reading.title) || firstOf(one.title) === firstOf(reading.title)),
    );
  const own = readings.filter((reading) => !hasOwn(reading) && reading.at < bound.at);
  return own.length > 0 && readings.some(hasOwn) ? own : undefined;
};

/** The readings of several groups, each with its bound behind it: "Contacts A B C | Max | Insulation A B C | Min". */
const readingsOf = (
  columns: readonly SurveyColumn[],
  bound: SurveyColumn,
): readonly SurveyColumn[] | undefined => {
  const readings = columns.filter(isReading);
  const bounds = columns.filter((one) => isBound(one) && !isNamed(columns, one));
  if (bounds.some((one) => !readings.some(({ at }) => at < one.at))) return undefined;
  const alike = bounds.filter(({ concept }) => concept === bound.concept);
  const areEach =
    alike.length > 1 && alike.every((one) => before(readings, bounds, one).length > 0);
  const sorts = new Set(readings.map(({ unit }) => sortOf(unit)));
  if (!areEach && (bound.unit !== undefined || sorts.size < 2)) return undefined;
  const own = before(readings, bounds, bound);
  const sort = sortOf(bound.unit ?? own[0]?.unit);
  return own.filter(({ unit }) => sortOf(unit) === sort);
};

const numbersOf = (cells: readonly Cell[]): number[] => cells.flatMap(({ number }) => number ?? []);

/** Share of the numbers that show what a bound is for. */
const MOST = 0.7;

/** Spreads that stand one beside the other right before a bound. */
const spreadsBefore = (
  columns: readonly SurveyColumn[],
  { at }: SurveyColumn,
): readonly SurveyColumn[] => {
  const spread = columns.find(
    (one) => one.at === at - 1 && one.concept === "spread" && one.numbers,
  );
  return spread ? [...spreadsBefore(columns, spread), spread] : [];
};

/** The spreads right before a bound, where nearly all of its values keep the bound and nearly none of the readings do: "Spread, ms | allowed, ms". */
const spreadsOf = (
  columns: readonly SurveyColumn[],
  bound: SurveyColumn,
  under: Under,
): readonly SurveyColumn[] => {
  const spreads = spreadsBefore(columns, bound).filter(
    ({ unit }) =>
      bound.unit === undefined ||
      unit === undefined ||
      unitSize(bound.unit).quantity === unitSize(unit).quantity,
  );
  const most = Math.max(...numbersOf(under(bound.at)));
  if (bound.concept === "minimum" || !Number.isFinite(most)) return [];
  const within = (ats: readonly number[]) => {
    const numbers = ats.flatMap((at) => numbersOf(under(at)));
    return numbers.filter((number) => number <= most).length / numbers.length;
  };
  const readings = columns.filter(isReading).map(({ at }) => at);
  return within(spreads.map(({ at }) => at)) >= MOST && within(readings) < 1 - MOST ? spreads : [];
};

/** Bounds with the columns that they are for, where the order of the columns or the numbers show it. */
export const withBounded = (
  columns: readonly SurveyColumn[],
  under: Under,
): readonly SurveyColumn[] =>
  columns.map((column) => {
    if (!isBound(column) || isNamed(columns, column)) return column;
    const spreads = spreadsOf(columns, column, under);
    const bounded =
      spreads.length > 0 ? spreads : (withoutOwn(columns, column) ?? readingsOf(columns, column));
    return bounded ? { ...column, bounds: bounded.map(({ at }) => at) } : column;
  });
