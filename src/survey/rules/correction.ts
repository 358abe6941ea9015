import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Unit } from "../../quantities/units";
import type { Block, Entry } from "../find/block";
import { classOf } from "../find/kindOf";
import { type Cell, inBaseUnit } from "../read/cells";
import { findingAt, middleOf, type SurveyContext, type SurveyRule, written } from "./rule";

interface Corrected {
  readonly entry: Entry;
  readonly cell: Cell;
  /** Corrected value through reading. */
  readonly factor: number;
  readonly temperature?: number;
  readonly slack: number;
}

/** A way to correct that a table follows: the factor that belongs to a line, and its name. */
interface Method {
  readonly name: (line: Corrected, context: SurveyContext) => string;
  readonly factor: (line: Corrected) => number | undefined;
}

/** Whether two units are of one sort: what is corrected beside another quantity is not corrected from it. */
const areAlike = (one: Unit | undefined, other: Unit | undefined): boolean =>
  one === undefined || other === undefined || classOf(one) === classOf(other);

/** The temperature that a line tells, in °C. */
const warmthOf = ({ beside: { temperature, air } }: Entry): { readonly temperature?: number } => {
  const warmth = temperature ?? air;
  if (warmth?.number === undefined) return {};
  const { number, unit } = warmth;
  return { temperature: unit === "°F" ? ((number - 32) * 5) / 9 : number };
};

const inBase = (number: number, unit: Unit | undefined): number =>
  unit ? inBaseUnit(number, unit) : number;

const correctedOf = (block: Block): Corrected[] =>
  block.entries.flatMap((entry): Corrected[] => {
    const { cell, unit } = entry;
    const { corrected } = entry.beside;
    if (corrected?.number === undefined || cell?.number === undefined || cell.number === 0)
      return [];
    if (!areAlike(corrected.unit, unit)) return [];
    return [
      {
        entry,
        cell: corrected,
        factor: inBase(corrected.number, corrected.unit ?? unit) / inBase(cell.number, unit),
        ...warmthOf(entry),
        slack:
          0.025 + (0.6 * 10 ** -decimalsOf(corrected)) / Math.max(Math.abs(corrected.number), 1e-9),
      },
    ];
  });

const decimalsOf = ({ text, formula }: Cell): number => {
  if (formula !== undefined) return 9;
  const digits = /[.,](\d+)/.exec(text)?.[1];
  return digits?.length ?? 0;
};

const halving = (base: number): Method => ({
  name: (_, { text }) => text.halving(base),
  factor: ({ temperature }) =>
    temperature === undefined ? undefined : 2 ** ((temperature - base) / 10),
});

/** The methods that a table's own lines may follow, the general ones first. */
const methodsOf = (lines: readonly Corrected[]): Method[] => {
  const byTemperature = new Map(
    groupBy(lines, ({ temperature }) => String(temperature)).map((group) => [
      group[0]?.temperature,
      group.length >= 3 ? middleOf(group.map(({ factor }) => factor)) : undefined,
    ]),
  );
  const middle = middleOf(lines.map(({ factor }) => factor));
  return [
    halving(20),
    halving(40),
    halving(25),
    { name: (_, { text }) => text.oneFactor, factor: () => middle },
    {
      name: ({ temperature }, { text }) => text.factorOf(temperature ?? 0),
      factor: ({ temperature }) => byTemperature.get(temperature),
    },
  ];
};

const follows = (line: Corrected, method: Method): boolean => {
  const factor = method.factor(line);
  return factor !== undefined && Math.abs(line.factor / factor - 1) <= line.slack;
};

const findIn = (block: Block, context: SurveyContext): Finding[] => {
  const lines = correctedOf(block);
  if (lines.length < 4) return [];
  const method = methodsOf(lines).find(
    (one) => lines.filter((line) => follows(line, one)).length >= lines.length * 0.7,
  );
  if (!method) return [];
  return lines.flatMap((line) => {
    const factor = method.factor(line);
    if (factor === undefined || follows(line, method)) return [];
    const { entry, cell } = line;
    const expected = written(((cell.number ?? 0) / line.factor) * factor, cell.unit ?? entry.unit);
    const inverted =
      Math.abs(line.factor * factor - 1) <= line.slack && Math.abs(factor - 1) > 0.03;
    const say = inverted ? context.text.invertedFactor : context.text.notCorrected;
    return [
      findingAt(
        "survey-correction",
        "query",
        block,
        entry,
        cell.address,
        say(written(cell.number ?? 0, cell.unit), expected, method.name(line, context)),
        {
          found: cell.text,
          expected,
        },
      ),
    ];
  });
};

/** A corrected value that does not follow from its reading by the method that the table itself follows. */
export const correction: SurveyRule = {
  id: "survey-correction",
  find: (context) => context.survey.blocks.flatMap((block) => findIn(block, context)),
};
