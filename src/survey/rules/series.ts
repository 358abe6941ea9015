import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import { type Unit, unitSize } from "../../quantities/units";
import type { Block, Entry, SurveyColumn } from "../find/block";
import { classOf } from "../find/kindOf";
import { type Cell, inBaseUnit } from "../read/cells";
import { positionsAmong } from "../understand/phases";
import type { Concept } from "../words/words";
import { compare } from "./judge";
import { findingAt, middleOf, type SurveyContext, type SurveyRule, written } from "./rule";

/** A number of a series with the entry that it belongs to. */
interface Value {
  readonly entry: Entry;
  readonly cell: Cell;
  readonly unit?: Unit;
  readonly value: number;
}

/** Columns whose numbers may differ from line to line for good reason, or that other rules look at. */
const FREE: readonly (Concept | undefined)[] = [
  "date",
  "time",
  "due",
  "calibrated",
  "serial",
  "limit",
  "minimum",
  "maximum",
  "required",
  "primary",
  "secondary",
  "ratio",
  "class",
  "factor",
  "corrected",
  "change",
  "spread",
  "error",
  "index",
  "voltage",
  "current",
  "duration",
  "temperature",
  "air",
  "humidity",
  "panel",
  "name",
  "part",
  "test",
  "position",
  "remarks",
  "result",
];

/** Readings from which on a series shows, and how close together the others have to lie: highest through lowest; insulation is seldom alike at all. */
const [ENOUGH, TIGHT, TIGHT_INSULATION] = [6, 2, 1.35];
/** By how much of its own spread a series may be missed, and by how much at least; resistances of joints and contacts differ for many reasons, and sound insulation does by a few times (common practice, no source). */
const [SPREADS, LEAST, OF_RESISTANCE, OF_INSULATION] = [3, 1.15, 1.5, 4];
/** From here on it is a slip of the unit, which is told as such. */
const SLIP = 79;

/** How close the others of a series have to lie, and by how much one has to lie off them. */
const boundsOf = (unit: Unit | undefined): { readonly tight: number; readonly least: number } => {
  if (unit !== undefined && classOf(unit) === "high resistance")
    return { tight: TIGHT_INSULATION, least: OF_INSULATION };
  const isResistance = unit !== undefined && unitSize(unit).quantity === "resistance";
  return { tight: TIGHT, least: isResistance ? OF_RESISTANCE : LEAST };
};

/** The one number that lies off all others, which lie close together; two of a kind are no slip. */
const oddOf = (values: readonly Value[]): Value | undefined => {
  if (values.length < ENOUGH) return undefined;
  const sorted = values.toSorted((one, other) => one.value - other.value);
  return [sorted[0], sorted.at(-1)].find((odd) => {
    const others = sorted.filter((one) => one !== odd).map(({ value }) => value);
    const [low, high] = [others[0] ?? 0, others.at(-1) ?? 0];
    if (!odd || low <= 0 || odd.value <= 0 || high === low) return false;
    const { tight, least } = boundsOf(odd.unit);
    if (high / low > tight) return false;
    const off = Math.max(odd.value / high, low / odd.value);
    return off > Math.max(least, (high / low) ** SPREADS) && off < SLIP;
  });
};

const base = (cell: Cell, unit: Entry["unit"]): number | undefined => {
  const own = cell.unit ?? unit;
  return cell.number === undefined || (cell.bound ?? "exact") !== "exact"
    ? undefined
    : own
      ? inBaseUnit(cell.number, own)
      : cell.number;
};

/** Readings of one thing: of one place in all panels, and of all phases where the places are phases alone. */
const readingsOf = ({ entries }: Block): Value[][] => {
  const read = entries.filter(
    // What came back low after the withstand test is told for itself.
    ({ stage, column: { concept } }) =>
      stage !== "after" && (concept === "reading" || !FREE.includes(concept)),
  );
  const sortOf = ({ kind, unit, operation, column, beside }: Entry) =>
    [
      kind,
      unit && unitSize(unit).quantity,
      operation,
      column.position === undefined ? column.title : "",
      beside.required?.text,
      beside.part?.text,
      beside.test?.text,
    ].join("|");
  const isPlace = positionsAmong(read.map(({ position }) => position));
  const phases = read.filter(({ position }) => position === "" || isPlace(position) !== undefined);
  const places = groupBy(read, (entry) => `${sortOf(entry)}|${entry.position}`);
  return [...groupBy(phases, sortOf), ...places].map((group) =>
    group.flatMap((entry) => {
      const value = entry.cell && base(entry.cell, entry.unit);
      return entry.cell && value !== undefined
        ? [{ entry, cell: entry.cell, unit: entry.unit, value }]
        : [];
    }),
  );
};

/** Numbers beside the readings: a gap, a motor's time, a pressure at which an alarm came. */
const besideOf = (block: Block, columns: readonly SurveyColumn[]): Value[][] => {
  const lines = groupBy(block.entries, ({ line }) => String(line)).flatMap(
    ([first]) => first ?? [],
  );
  return columns.map((column) =>
    lines.flatMap((entry) => {
      const cell = block.at(entry.line, column.at);
      const value = cell && cell.day === undefined ? base(cell, column.unit) : undefined;
      return cell && value !== undefined ? [{ entry, cell, unit: column.unit, value }] : [];
    }),
  );
};

const inBlock = (block: Block, context: SurveyContext): Finding[] => {
  const read = new Set(block.entries.map(({ column }) => column.at));
  const others = block.columns.filter(
    ({ at, concept, numbers, unit }) =>
      numbers && !read.has(at) && unit !== undefined && !FREE.includes(concept),
  );
  const found = [...readingsOf(block), ...besideOf(block, others)].flatMap((series) => {
    const odd = oddOf(series);
    if (!odd || compare(odd.entry, context).some(({ verdict }) => verdict === "Fail")) return [];
    const { entry, cell } = odd;
    const middle = middleOf(series.map(({ value }) => value));
    const usual = series.find(({ value }) => value === middle)?.cell;
    return [
      findingAt(
        "survey-off-series",
        "query",
        block,
        entry,
        cell.address,
        context.text.offSeries(
          written(cell.number ?? 0, cell.unit),
          written(usual?.number ?? middle, usual?.unit),
        ),
        { found: cell.text },
      ),
    ];
  });
  return groupBy(found, ({ address }) => address).flatMap(([first]) => first ?? []);
};

/** One number that lies off a series whose others lie close together. */
export const series: SurveyRule = {
  id: "survey-off-series",
  find: (context) => context.survey.blocks.flatMap((block) => inBlock(block, context)),
};
