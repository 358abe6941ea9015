import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import { type Unit, unitSize } from "../../quantities/units";
import { withstandVoltage } from "../../standards/withstandVoltage";
import type { Block, Entry } from "../find/block";
import { quantitiesIn } from "../find/findFacts";
import { type Cell, inBaseUnit } from "../read/cells";
import { unitIn } from "../understand/unitIn";
import { findingAt, findingOn, mostOf, type SurveyContext, type SurveyRule, written } from "./rule";

/** What a test was done at: a voltage, a current or a time of one line. */
interface Level {
  readonly block: Block;
  readonly entry: Entry;
  readonly cell: Cell;
  /** In volts, amperes or seconds. */
  readonly value: number;
  /** What the heading says that it has to be. */
  readonly stated?: number;
  readonly unit: "kV" | "V" | "A" | "s";
  /** Levels of one sort are alike all over a workbook. */
  readonly sort: string;
}

/** Shares by which a level may miss: reading errors of a test set (IEC 60060-1 gives 3 % above a minute). */
const [BELOW, ABOVE] = [0.985, 1.035];

const base = (cell: Cell, unit: Unit | undefined): number | undefined =>
  cell.number === undefined
    ? undefined
    : inBaseUnit(cell.number, cell.unit ?? unitIn(cell.text) ?? unit ?? "V");

/** A voltage that the name of the test tells: "Hipot 27 kV 60 s". */
const inTest = ({ beside }: Entry): Cell | undefined => {
  const { test } = beside;
  const volts =
    test && quantitiesIn(test.text).find(({ unit }) => unitSize(unit).quantity === "voltage");
  return test && volts ? { ...test, number: volts.number, unit: volts.unit } : undefined;
};

const quantityOf = ({ unit }: Cell) => unit && unitSize(unit).quantity;

/** The level that the line itself asks for, in volts: "Specified 40 | Applied 32 | kV". */
const askedFor = ({ beside, unit }: Entry): number | undefined => {
  const { required } = beside;
  if (required?.number === undefined || unit === undefined) return undefined;
  const own = required.unit ?? unit;
  return unitSize(own).quantity === "voltage" ? inBaseUnit(required.number, own) : undefined;
};

/** The level of a withstand test: the reading itself, or the voltage beside the current that it drew. */
const withstandOf = (block: Block, entry: Entry): Level | undefined => {
  const isLevel = entry.column.concept === "voltage";
  const cell = isLevel
    ? entry.cell
    : entry.kind === "withstand"
      ? (entry.beside.voltage ?? (entry.unit === "kV" ? entry.cell : inTest(entry)))
      : undefined;
  const value = cell && base(cell, isLevel ? (entry.unit ?? "kV") : "kV");
  const stated =
    askedFor(entry) ?? (entry.facts.kV === undefined ? undefined : entry.facts.kV * 1000);
  return cell && value !== undefined
    ? { block, entry, cell, value, stated, unit: "kV", sort: `${entry.kind} level` }
    : undefined;
};

/** Tests that are done at a level of their own each, or whose level is looked at by itself. */
const APPLIED: readonly string[] = [
  "withstand",
  "metering",
  "protection",
  "currentTransformer",
  "voltageTransformer",
  "excitation",
];

/** The DC voltage of an insulation test. */
const voltageOf = (block: Block, entry: Entry): Level | undefined => {
  const voltage = entry.beside.voltage ?? inTest(entry);
  if (!voltage || APPLIED.includes(entry.kind) || quantityOf(voltage) === "current")
    return undefined;
  const value = base(voltage, voltage.unit);
  return value === undefined
    ? undefined
    : {
        block,
        entry,
        cell: voltage,
        value,
        stated: entry.facts.testV,
        unit: "V",
        sort: `${entry.kind} voltage`,
      };
};

/** Tests that are done at a current, and no others. */
const INJECTED: readonly string[] = ["earthing", "contact"];

const currentOf = (block: Block, entry: Entry): Level | undefined => {
  const { current, primary, voltage } = entry.beside;
  // What is injected into an earthing circuit or a contact is the test current, as the primary one of a transformer is.
  const injected = INJECTED.includes(entry.kind) ? primary : undefined;
  const cell =
    current ?? injected ?? (voltage && quantityOf(voltage) === "current" ? voltage : undefined);
  if (cell?.number === undefined || entry.kind === "withstand") return undefined;
  return { block, entry, cell, value: cell.number, unit: "A", sort: `${entry.kind} current` };
};

const durationOf = (block: Block, entry: Entry): Level | undefined => {
  const { duration } = entry.beside;
  const value = duration?.number === undefined ? undefined : base(duration, "s");
  return duration && value !== undefined
    ? {
        block,
        entry,
        cell: duration,
        value,
        stated: entry.facts.seconds,
        unit: "s",
        sort: `${entry.kind} time`,
      }
    : undefined;
};

const SORTS = [withstandOf, voltageOf, currentOf, durationOf];

const levelsOf = (block: Block): Level[] =>
  SORTS.flatMap((sort) => {
    const levels = block.entries.flatMap((entry) => sort(block, entry) ?? []);
    return groupBy(levels, ({ cell, sort: name }) => `${cell.address} ${name}`).flatMap(
      ([first]) => first ?? [],
    );
  });

const say = (value: number, unit: Level["unit"]) =>
  written(unit === "kV" ? value / 1000 : value, unit);

/** What a level has to be: as the heading says, else as most lines have it. */
const requiredOf = (levels: readonly Level[], { text }: SurveyContext) => {
  const stated = levels[0]?.stated;
  const values = levels.map(({ value }) => value);
  if (stated !== undefined && values.some((value) => Math.abs(value / stated - 1) < 0.02))
    return { value: stated, from: text.asHeading };
  const most = mostOf(values, 0.6);
  return most && { value: most.value, from: text.asOthers(`${most.times} of ${values.length}`) };
};

const judge = (
  { block, entry, cell, value, unit }: Level,
  required: { value: number; from: string },
  { text }: SurveyContext,
): Finding[] => {
  const low = value < required.value * BELOW;
  const isTime = unit === "s";
  if (!low && (isTime || value <= required.value * ABOVE)) return [];
  const words = isTime ? text.timeTooShort : low ? text.levelTooLow : text.levelTooHigh;
  const message = words(say(value, unit), say(required.value, unit), required.from);
  return [
    findingAt(
      isTime ? "survey-duration" : "survey-level",
      low ? "stop" : "query",
      block,
      entry,
      cell.address,
      message,
      {
        found: cell.text,
        expected: say(required.value, unit),
      },
    ),
  ];
};

/** Lines of a table from which on it speaks for itself. */
const ENOUGH = 4;

/** The level of a table as a whole against the criterion of the basis, once. */
const againstCriterion = (
  levels: readonly Level[],
  { ratedkV, basis, text }: SurveyContext,
): Finding[] => {
  const most = mostOf(
    levels.map(({ value }) => value),
    0.5,
  );
  const [first] = levels;
  if (!first || !most || ratedkV === undefined || basis === undefined) return [];
  const site = withstandVoltage(ratedkV, { basis, place: "site", wave: "AC", part: "main" });
  if (!site.ok || most.value / 1000 >= site.value.value * BELOW) return [];
  const { value, source } = site.value;
  return [
    findingOn(
      "survey-level-criterion",
      "query",
      first.block,
      text.belowCriterion(say(most.value, "kV"), written(value, "kV"), source.document),
    ),
  ];
};

const find = (context: SurveyContext): Finding[] =>
  groupBy(context.survey.blocks.flatMap(levelsOf), ({ sort }) => sort).flatMap((alike) => {
    const blocks = groupBy(
      alike,
      ({ block, cell }) => `${block.sheet} ${block.range} ${block.turned ? cell.row : cell.column}`,
    );
    const found = blocks.flatMap((levels) => {
      const required =
        requiredOf(levels, context) ??
        (levels.length < ENOUGH ? requiredOf(alike, context) : undefined);
      const off = required ? levels.flatMap((level) => judge(level, required, context)) : [];
      // Where a third of the lines differ there is more than one level.
      return off.length > Math.max(2, levels.length / 3) ? [] : off;
    });
    return alike[0]?.sort === "withstand level"
      ? [...found, ...blocks.flatMap((levels) => againstCriterion(levels, context)).slice(0, 1)]
      : found;
  });

/** A test at a lower level, a lower current or for a shorter time than the heading or the other lines have; a stress above it is told as well. */
export const stress: SurveyRule = { id: "survey-level", find };
