import type { Finding } from "../../check/findings/finding";
import type { Messages } from "../../messages/messages";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, Entry, SurveyColumn } from "../find/block";
import { isSummary } from "../find/nameColumns";
import type { Cell } from "../read/cells";
import { hasWord } from "../words/sheetWords";
import type { Concept } from "../words/words";
import { findingAt, type SurveyContext, type SurveyRule, written } from "./rule";

/** What a way is told by: a text of the messages. */
type WayName = keyof Messages["survey"]["ways"];

/** A way to work out what a column states from several numbers. */
interface Way {
  readonly name: WayName;
  readonly of: (numbers: readonly number[]) => number;
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]) => sum(values) / values.length;
const highest = (values: readonly number[]) => Math.max(...values);
const lowest = (values: readonly number[]) => Math.min(...values);

const TOTALS: readonly Way[] = [
  { name: "mean", of: mean },
  { name: "sum", of: sum },
  { name: "lowest", of: lowest },
  { name: "highest", of: highest },
];

const SPREADS: readonly Way[] = [
  {
    name: "aboveLowestPercent",
    of: (all) => (highest(all) / lowest(all) - 1) * 100,
  },
  {
    name: "rangePercentOfMean",
    of: (all) => ((highest(all) - lowest(all)) / mean(all)) * 100,
  },
  {
    name: "rangePercentOfHighest",
    of: (all) => (1 - lowest(all) / highest(all)) * 100,
  },
  {
    name: "furthestFromMeanPercent",
    of: (all) => highest(all.map((one) => Math.abs(one / mean(all) - 1))) * 100,
  },
  { name: "range", of: (all) => highest(all) - lowest(all) },
  { name: "highestThroughLowest", of: (all) => highest(all) / lowest(all) },
];

const CHANGES: readonly Way[] = [
  { name: "lastThroughFirst", of: (all) => (all.at(-1) ?? 0) / (all[0] ?? 0) },
  {
    name: "lastThroughFirstPercent",
    of: (all) => ((all.at(-1) ?? 0) / (all[0] ?? 0)) * 100,
  },
  {
    name: "changePercent",
    of: (all) => ((all.at(-1) ?? 0) / (all[0] ?? 0) - 1) * 100,
  },
  { name: "change", of: (all) => (all.at(-1) ?? 0) - (all[0] ?? 0) },
];

const ratioOf = (cell: Cell | undefined): number | undefined => {
  const [, high, low] =
    /^(\d+(?:[.,]\d+)?)\s*[/:]\s*(\d+(?:[.,]\d+)?)/.exec(cell?.text ?? "") ?? [];
  return high === undefined ? undefined : Number(high) / Number(low);
};

/** What a line comes to by one way; undefined where it lacks a number for it. */
interface Sum {
  readonly name: WayName;
  readonly of: (line: readonly Entry[]) => number | undefined;
}

const ERRORS: readonly Sum[] = [
  {
    name: "errorOfExpected",
    of: ([entry]) => {
      const expected = entry?.beside.required?.number;
      const reading = entry?.cell?.number;
      return expected === undefined || reading === undefined
        ? undefined
        : (reading / expected - 1) * 100;
    },
  },
  {
    name: "errorOfApplied",
    of: ([entry]) => {
      const { voltage, current, primary } = entry?.beside ?? {};
      const applied = (voltage ?? current ?? primary)?.number;
      const reading = entry?.cell?.number;
      return applied === undefined || reading === undefined
        ? undefined
        : (reading / applied - 1) * 100;
    },
  },
  {
    name: "errorOfPrimary",
    of: ([entry]) => {
      const ratio = ratioOf(entry?.beside.ratio);
      const primary = entry?.beside.primary?.number;
      const secondary = entry?.beside.secondary?.number ?? entry?.cell?.number;
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

/** Columns of numbers right before one, of one unit: what it may sum up. */
const runBefore = (block: Block, { at }: SurveyColumn): readonly number[] => {
  const run: SurveyColumn[] = [];
  for (const column of block.columns.filter((one) => one.at < at).toReversed()) {
    const isOf = column.numbers && (run.length === 0 || column.unit === run[0]?.unit);
    if (!isOf) break;
    run.unshift(column);
  }
  return run.map((column) => column.at);
};

/** Columns whose numbers another may be worked out from: the readings, those of one operation or group, and the columns before it. */
const sourcesOf = (block: Block, column: SurveyColumn): readonly (readonly number[])[] => {
  const read = [...new Set(block.entries.map((entry) => entry.column))].filter(
    ({ stage, at }) =>
      at !== column.at &&
      (stage === undefined || column.stage === undefined || stage === column.stage),
  );
  // What is measured in several units comes to nothing together.
  const isAlike = new Set(read.map(({ unit }) => unit)).size < 2;
  const groups = [
    ...(isAlike ? [read] : groupBy(read, ({ unit }) => String(unit))),
    ...groupBy(read, ({ operation, stage }) => `${operation} ${stage}`),
    ...groupBy(read, ({ group }) => String(group)),
  ].map((group) => group.map(({ at }) => at));
  const all = [...groups, runBefore(block, column)].filter(({ length }) => length >= 2);
  return groupBy(all, (ats) => ats.join()).flatMap(([first]) => (first ? [first] : []));
};

const sumsOver = (block: Block, ways: readonly Way[], ats: readonly number[]): Sum[] =>
  ways.map(({ name, of }) => ({
    name,
    of: ([entry]) => {
      const numbers = ats.flatMap((at) => (entry && block.at(entry.line, at)?.number) ?? []);
      return numbers.length < ats.length ? undefined : of(numbers);
    },
  }));

interface Line {
  readonly line: readonly Entry[];
  readonly first: Entry;
  readonly cell: Cell;
}

const linesWith = (block: Block, { at, stage }: SurveyColumn): Line[] =>
  groupBy(
    block.entries.filter(
      ({ column }) => column.stage === undefined || stage === undefined || column.stage === stage,
    ),
    ({ line }) => String(line),
  ).flatMap((line) => {
    const [first] = line;
    const cell = first && block.at(first.line, at);
    return first && cell?.number !== undefined ? [{ line, first, cell }] : [];
  });

/** Lines from which on a way shows, and the share of them that has to follow it. */
const [ENOUGH, SHARE] = [4, 0.65];

/** Lines and their share where the title does not say that the column sums up others. */
const [ENOUGH_UNSAID, SHARE_UNSAID] = [6, 0.8];

/** The way that most lines follow. */
const wayOf = (
  lines: readonly Line[],
  sums: readonly Sum[],
  [enough, share]: readonly [number, number],
): Sum | undefined => {
  const counted = sums.map((one) => {
    const values = lines.map(({ line, cell }) => ({ cell, value: one.of(line) }));
    const worked = values.filter(({ value }) => value !== undefined);
    const same = worked.filter(({ cell, value }) => value !== undefined && isSame(cell, value));
    return { one, worked: worked.length, same: same.length };
  });
  const [best] = counted
    .filter(({ worked, same }) => worked >= enough && same >= worked * share)
    .sort((one, other) => other.same - one.same);
  return best?.one;
};

/** Columns that may be worked out from others of their line. */
const WORKED: readonly (Concept | undefined)[] = ["spread", "error", "change", undefined];

/** Whether numbers show how they come about: several of them, most with two figures. */
const areTelling = (lines: readonly Line[]): boolean => {
  const texts = lines.map(({ cell }) => cell.text);
  const telling = texts.filter((text) => text.replace(/\D|^0[.,]?0*/g, "").length >= 2);
  return new Set(texts).size >= 3 && telling.length >= texts.length * 0.6;
};

const sumsFor = (block: Block, column: SurveyColumn, lines: readonly Line[]): readonly Sum[] => {
  const sources = sourcesOf(block, column);
  const over = (ways: readonly Way[]) => sources.flatMap((ats) => sumsOver(block, ways, ats));
  if (column.concept === "spread") return [...over(SPREADS), ...ERRORS];
  if (column.concept === "error") return ERRORS;
  if (column.concept === "change") return over(CHANGES);
  if (!areTelling(lines)) return [];
  const apart = isSaid(column) ? sources : sources.filter((ats) => !isLikeOne(block, lines, ats));
  return apart.flatMap((ats) => sumsOver(block, [...TOTALS, ...SPREADS], ats));
};

/** Whether a column is like one of the others in many lines: then its numbers show no sum, such as the mean of three like coils. */
const isLikeOne = (block: Block, lines: readonly Line[], ats: readonly number[]): boolean =>
  ats.some((at) => {
    const alike = lines.filter(({ cell, first }) => {
      const other = block.at(first.line, at)?.number;
      return other !== undefined && isSame(cell, other);
    });
    return alike.length > lines.length * 0.3;
  });

/** Whether a column is said to be worked out, by its title. */
const isSaid = ({ concept, title }: SurveyColumn): boolean =>
  concept !== undefined || hasWord(title, "summary");

const inColumn = (block: Block, column: SurveyColumn, { text }: SurveyContext): Finding[] => {
  const lines = linesWith(block, column);
  if (lines.length < ENOUGH) return [];
  const shown = isSaid(column)
    ? ([ENOUGH, SHARE] as const)
    : ([ENOUGH_UNSAID, SHARE_UNSAID] as const);
  const way = wayOf(lines, sumsFor(block, column, lines), shown);
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
            text.doesNotAddUp(
              column.title,
              written(cell.number ?? 0),
              written(value),
              text.ways[way.name],
            ),
            {
              column: column.title,
              found: cell.text,
              expected: written(value),
            },
          ),
        ];
      });
};

/** Typed lines of sums under the lines of a table: where one way holds for most columns, the others follow it too. */
const inSummaries = (block: Block, { text }: SurveyContext): Finding[] => {
  const [first, last] = block.span;
  const rows = Array.from({ length: last - first + 1 }, (_, index) => first + index);
  let from = first;
  return rows.flatMap((row): Finding[] => {
    const cells = block.columns.flatMap(({ at }) => block.at(row, at) ?? []);
    if (!isSummary(cells)) return [];
    const lines = block.lines.filter((line) => line >= from && line < row);
    from = row + 1;
    const summed = block.columns.flatMap(({ at, title }) => {
      const cell = block.at(row, at);
      const numbers = lines.flatMap((line) => block.at(line, at)?.number ?? []);
      return cell?.number !== undefined && cell.formula === undefined && numbers.length >= 2
        ? [{ cell, title, numbers }]
        : [];
    });
    const off = TOTALS.map((way) => ({
      way,
      wrong: summed.filter(({ cell, numbers }) => !isSame(cell, way.of(numbers))),
    })).find(({ wrong }) => wrong.length > 0 && wrong.length < summed.length / 2);
    if (!off) return [];
    const way = text.ways[off.way.name];
    return off.wrong.map(({ cell, title, numbers }) => {
      const value = off.way.of(numbers);
      return findingAt(
        "survey-worked-out",
        "query",
        block,
        { kind: block.kinds[0] ?? "", panel: "", position: "" },
        cell.address,
        text.doesNotAddUp(title, written(cell.number ?? 0), written(value), way),
        { found: cell.text, expected: written(value) },
      );
    });
  });
};

/** A mean, a spread, an error or a sum that does not follow from the readings as in the other lines or columns. */
export const workedOut: SurveyRule = {
  id: "survey-worked-out",
  find: (context) =>
    context.survey.blocks.flatMap((block) => {
      const read = new Set(block.entries.map(({ column }) => column.at));
      return [
        ...block.columns
          .filter(
            ({ at, concept, numbers }) =>
              numbers && WORKED.includes(concept) && (!read.has(at) || concept !== undefined),
          )
          .flatMap((column) => inColumn(block, column, context)),
        ...inSummaries(block, context),
      ];
    }),
};
