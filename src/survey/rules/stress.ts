import type { Finding } from "../../check/finding";
import type { Unit } from "../../quantities/units";
import { withstandVoltage } from "../../standards/withstandVoltage";
import type { Block, Entry } from "../block";
import { type Cell, inBaseUnit } from "../cells";
import { unitIn } from "../unitIn";
import {
  findingAt,
  findingOn,
  groupBy,
  mostOf,
  type SurveyContext,
  type SurveyRule,
  written,
} from "./rule";

/** What a level must come to, and where that is said. */
interface Required {
  readonly value: number;
  readonly from: string;
}

/** Shares by which a level may miss: reading errors of the instruments of a test set (IEC 60060-1 gives 3 % above a minute). */
const [BELOW, ABOVE] = [0.985, 1.035];

const base = (cell: Cell, unit: Unit | undefined): number | undefined =>
  cell.number === undefined ? undefined : inBaseUnit(cell.number, cell.unit ?? unit ?? "V");

/** What the heading says, else what most lines have. */
const requiredOf = (
  values: readonly number[],
  stated: number | undefined,
  { text }: SurveyContext,
): Required | undefined => {
  const most = mostOf(values, 0.6);
  const isStated =
    stated !== undefined && values.some((value) => Math.abs(value / stated - 1) < 0.02);
  if (isStated) return { value: stated, from: text.asHeading };
  return most
    ? { value: most.value, from: text.asOthers(`${most.times} of ${values.length}`) }
    : undefined;
};

interface Level {
  readonly entry: Entry;
  readonly cell: Cell;
  readonly value: number;
}

const levelFindings = (
  block: Block,
  levels: readonly Level[],
  stated: number | undefined,
  unit: Unit,
  context: SurveyContext,
): Finding[] => {
  const required = requiredOf(
    levels.map(({ value }) => value),
    stated,
    context,
  );
  if (!required) return [];
  const { text } = context;
  const say = (volts: number) => written(unit === "kV" ? volts / 1000 : volts, unit);
  return levels.flatMap(({ entry, cell, value }) => {
    const low = value < required.value * BELOW;
    if (!low && value <= required.value * ABOVE) return [];
    const message = (low ? text.levelTooLow : text.levelTooHigh)(
      say(value),
      say(required.value),
      required.from,
    );
    return [
      findingAt("survey-level", low ? "stop" : "query", block, entry, cell.address, message, {
        found: cell.text,
        expected: say(required.value),
      }),
    ];
  });
};

const onceALine = (levels: readonly Level[]): Level[] =>
  groupBy(levels, ({ cell }) => cell.address).flatMap(([first]) => first ?? []);

/** Levels of the withstand test, and DC voltages of insulation tests. */
const levels = (block: Block, context: SurveyContext): Finding[] => {
  const withstand = block.entries.flatMap((entry): Level[] => {
    const value =
      entry.kind === "withstand" && entry.cell ? base(entry.cell, entry.unit ?? "kV") : undefined;
    return value === undefined || !entry.cell ? [] : [{ entry, cell: entry.cell, value }];
  });
  const dc = block.entries.flatMap((entry): Level[] => {
    const cell = entry.kind === "withstand" ? undefined : entry.beside.voltage;
    const value = cell && base(cell, cell.unit);
    return value === undefined || !cell ? [] : [{ entry, cell, value }];
  });
  const facts = block.entries[0]?.facts;
  return [
    ...levelFindings(
      block,
      withstand,
      facts?.kV === undefined ? undefined : facts.kV * 1000,
      "kV",
      context,
    ),
    ...groupBy(onceALine(dc), ({ entry }) => entry.kind).flatMap((group) =>
      levelFindings(block, group, group[0]?.entry.facts.testV, "V", context),
    ),
    ...criterionOf(block, withstand, context),
  ];
};

/** The level of the table as a whole against the criterion of the basis, once. */
const criterionOf = (
  block: Block,
  withstand: readonly Level[],
  { ratedkV, basis, text }: SurveyContext,
): Finding[] => {
  const most = mostOf(
    withstand.map(({ value }) => value),
    0.5,
  );
  if (!most || ratedkV === undefined || basis === undefined) return [];
  const site = withstandVoltage(ratedkV, { basis, place: "site", wave: "AC", part: "main" });
  if (!site.ok || most.value / 1000 >= site.value.value * BELOW) return [];
  return [
    findingOn(
      "survey-level-criterion",
      "query",
      block,
      text.belowCriterion(
        written(most.value / 1000, "kV"),
        written(site.value.value, "kV"),
        site.value.source.document,
      ),
    ),
  ];
};

/** Currents of contact tests. */
const currents = (block: Block, context: SurveyContext): Finding[] => {
  const found = onceALine(
    block.entries.flatMap((entry): Level[] => {
      const { current } = entry.beside;
      return current?.number === undefined || entry.kind === "withstand"
        ? []
        : [{ entry, cell: current, value: current.number }];
    }),
  );
  return levelFindings(block, found, undefined, "A", context);
};

const secondsOf = (cell: Cell): number | undefined => {
  const unit = cell.unit ?? unitIn(cell.text);
  return cell.number === undefined ? undefined : unit ? inBaseUnit(cell.number, unit) : cell.number;
};

/** How long the voltage was held. */
const durations = (block: Block, context: SurveyContext): Finding[] => {
  const found = onceALine(
    block.entries.flatMap((entry): Level[] => {
      const { duration } = entry.beside;
      const value = duration && secondsOf(duration);
      return value === undefined || !duration ? [] : [{ entry, cell: duration, value }];
    }),
  );
  const required = requiredOf(
    found.map(({ value }) => value),
    block.entries[0]?.facts.seconds,
    context,
  );
  if (!required) return [];
  return found.flatMap(({ entry, cell, value }) =>
    value < required.value * 0.99
      ? [
          findingAt(
            "survey-duration",
            "stop",
            block,
            entry,
            cell.address,
            context.text.timeTooShort(
              written(value, "s"),
              written(required.value, "s"),
              required.from,
            ),
            {
              found: cell.text,
              expected: written(required.value, "s"),
            },
          ),
        ]
      : [],
  );
};

/** A test at a lower level, a lower current or for a shorter time than the heading or the other lines have; a stress above it is told as well. */
export const stress: SurveyRule = {
  id: "survey-level",
  find: (context) =>
    context.survey.blocks.flatMap((block) => [
      ...levels(block, context),
      ...durations(block, context),
      ...currents(block, context),
    ]),
};
