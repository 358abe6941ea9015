import type { Finding } from "../../check/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, Entry, SurveyColumn } from "../block";
import type { Cell } from "../cells";
import { findingAt, type SurveyContext, type SurveyRule, written } from "./rule";

/** A way to work out what a column states from the readings of a line. */
interface Way {
  readonly name: string;
  readonly of: (line: readonly Entry[]) => number | undefined;
}

const numbers = (line: readonly Entry[]) => line.flatMap(({ cell }) => cell?.number ?? []);
const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const several = (of: (values: readonly number[]) => number) => (line: readonly Entry[]) => {
  const values = numbers(line);
  return values.length < 2 ? undefined : of(values);
};

const SPREADS: readonly Way[] = [
  {
    name: "highest above lowest, in percent of the lowest",
    of: several((all) => (Math.max(...all) / Math.min(...all) - 1) * 100),
  },
  {
    name: "highest less lowest, in percent of the mean",
    of: several((all) => ((Math.max(...all) - Math.min(...all)) / mean(all)) * 100),
  },
  {
    name: "highest less lowest, in percent of the highest",
    of: several((all) => (1 - Math.min(...all) / Math.max(...all)) * 100),
  },
  {
    name: "furthest from the mean, in percent",
    of: several((all) => Math.max(...all.map((one) => Math.abs(one / mean(all) - 1))) * 100),
  },
  { name: "highest less lowest", of: several((all) => Math.max(...all) - Math.min(...all)) },
];

const ratioOf = (cell: Cell | undefined): number | undefined => {
  const [, high, low] =
    /^(\d+(?:[.,]\d+)?)\s*[/:]\s*(\d+(?:[.,]\d+)?)/.exec(cell?.text ?? "") ?? [];
  return high === undefined ? undefined : Number(high) / Number(low);
};

const ERRORS: readonly Way[] = [
  {
    name: "reading against what is expected, in percent",
    of: ([entry]) => {
      const expected = entry?.beside.required?.number;
      const reading = entry?.cell?.number;
      return expected === undefined || reading === undefined
        ? undefined
        : (reading / expected - 1) * 100;
    },
  },
  {
    name: "ratio times secondary, against the primary, in percent",
    of: ([entry]) => {
      const ratio = ratioOf(entry?.beside.ratio);
      const primary = entry?.beside.primary?.number;
      const secondary = entry?.cell?.number;
      return ratio === undefined || primary === undefined || secondary === undefined
        ? undefined
        : ((ratio * secondary - primary) / primary) * 100;
    },
  },
];

/** Shares by which what is written may differ from what it comes to, by its decimals. */
const isSame = (cell: Cell, value: number): boolean => {
  const decimals = cell.formula === undefined ? (/[.,](\d+)/.exec(cell.text)?.[1]?.length ?? 0) : 1;
  return (
    Math.abs(Math.abs(cell.number ?? 0) - Math.abs(value)) <=
    0.6 * 10 ** -decimals + Math.abs(value) * 0.01
  );
};

const inColumn = (
  block: Block,
  column: SurveyColumn,
  ways: readonly Way[],
  { text }: SurveyContext,
): Finding[] => {
  const lines = groupBy(
    block.entries.filter(
      ({ column: own }) =>
        own.stage === undefined || column.stage === undefined || own.stage === column.stage,
    ),
    ({ line }) => String(line),
  ).flatMap((line) => {
    const [first] = line;
    const cell = first && block.at(first.line, column.at);
    return first &&
      cell?.number !== undefined &&
      line.every((entry) => entry.cell?.number !== undefined)
      ? [{ line, first, cell }]
      : [];
  });
  if (lines.length < 4) return [];
  const way = ways.find(
    ({ of }) =>
      lines.filter(({ line, cell }) => {
        const value = of(line);
        return value !== undefined && isSame(cell, value);
      }).length >=
      lines.length * 0.7,
  );
  return way === undefined
    ? []
    : lines.flatMap(({ line, first, cell }) => {
        const value = way.of(line);
        if (value === undefined || isSame(cell, value)) return [];
        return [
          findingAt(
            "survey-worked-out",
            "query",
            block,
            first,
            cell.address,
            text.doesNotAddUp(column.title, written(cell.number ?? 0), written(value), way.name),
            {
              column: column.title,
              found: cell.text,
              expected: written(value),
            },
          ),
        ];
      });
};

/** A spread or an error that does not follow from the readings of its line as in the other lines. */
export const workedOut: SurveyRule = {
  id: "survey-worked-out",
  find: (context) =>
    context.survey.blocks.flatMap((block) =>
      block.columns.flatMap((column) =>
        column.concept === "spread"
          ? inColumn(block, column, SPREADS, context)
          : column.concept === "error"
            ? inColumn(block, column, ERRORS, context)
            : [],
      ),
    ),
};
