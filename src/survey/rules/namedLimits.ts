import type { Finding } from "../../check/findings/finding";
import { unitSize } from "../../quantities/units";
import type { Block, Entry, Limit, SurveyColumn } from "../find/block";
import { factsIn } from "../find/findFacts";
import { sharesName } from "../find/shareNames";
import { type Cell, inBaseUnit } from "../read/cells";
import { boundInTitle } from "../understand/conceptOfTitle";
import type { Concept } from "../words/words";
import { resultOf } from "./judge";
import { findingAt, type SurveyContext, type SurveyRule, written } from "./rule";

/** Columns whose cells other rules judge, or that nothing bounds. */
const JUDGED: readonly (Concept | undefined)[] = [
  "reading",
  "corrected",
  "error",
  "spread",
  "voltage",
  "current",
  "duration",
  "leakage",
  "limit",
  "minimum",
  "maximum",
  "required",
  "factor",
  "primary",
  "secondary",
  "date",
  "result",
  "air",
  "humidity",
];

const BOUNDS: readonly (Concept | undefined)[] = ["minimum", "maximum", "limit"];

/** Columns beside the readings that have a bound of their own: an index, a dew point, a purity. */
const besides = (block: Block): SurveyColumn[] => {
  const read = new Set(block.entries.map(({ column }) => column.at));
  return block.columns.filter(
    ({ at, concept, numbers }) => numbers && !read.has(at) && !JUDGED.includes(concept),
  );
};

const isOfUnit = (limit: Limit, { unit, concept }: SurveyColumn): boolean =>
  concept === "index" || limit.unit === undefined || unit === undefined
    ? limit.unit === undefined || limit.unit === unit || concept === "index"
    : unitSize(limit.unit).quantity === unitSize(unit).quantity;

/** Bounds of a column in its line, under a title that has a word in common with its own. */
const limitsInLine = (block: Block, column: SurveyColumn, line: number): Limit[] =>
  block.columns
    .filter(({ concept, title }) => BOUNDS.includes(concept) && sharesName(title, column.title))
    .flatMap(({ concept, at, unit }): Limit[] => {
      const cell = block.at(line, at);
      return cell?.number === undefined
        ? []
        : [
            {
              side: concept === "maximum" ? "most" : "least",
              number: cell.number,
              unit: cell.unit ?? unit,
              address: cell.address,
            },
          ];
    });

const limitsInHeading = ({ facts, address, span }: Block, column: SurveyColumn): Limit[] => {
  const text = boundInTitle(column.title);
  const titled =
    text === undefined ? [] : factsOfTitle(text, address(span[0] - 1, column.at), column);
  const told = facts.limits.filter(
    ({ about }) => about !== undefined && sharesName(about, column.title),
  );
  return [...titled, ...told].filter((limit) => isOfUnit(limit, column));
};

const factsOfTitle = (text: string, address: string, { unit }: SurveyColumn): readonly Limit[] =>
  factsIn({ row: 0, column: 0, address, value: text, text, order: "day-first" }, unit).limits;

const isWithin = ({ number = 0 }: Cell, { unit }: SurveyColumn, limit: Limit): boolean => {
  const [value, bound] =
    unit && limit.unit
      ? [inBaseUnit(number, unit), inBaseUnit(limit.number, limit.unit)]
      : [number, limit.number];
  return limit.side === "least" ? value >= bound : value <= bound;
};

const inColumn = (block: Block, column: SurveyColumn, { text }: SurveyContext): Finding[] => {
  const heading = limitsInHeading(block, column);
  const judged = block.lines.flatMap((line) => {
    const cell = block.at(line, column.at);
    const entry = block.entries.find((one) => one.line === line);
    const own = limitsInLine(block, column, line);
    const limits = own.length > 0 ? own : heading;
    return cell?.number !== undefined && entry && limits.length > 0
      ? [{ cell, entry, broken: limits.find((limit) => !isWithin(cell, column, limit)) }]
      : [];
  });
  const beyond = judged.filter(({ broken }) => broken !== undefined);
  // Where most lines are beyond it, the bound is about something else.
  if (beyond.length > Math.max(1, judged.length * 0.4)) return [];
  return beyond.flatMap(({ cell, entry, broken }) =>
    broken ? [tell(block, { column, cell, entry, limit: broken }, text)] : [],
  );
};

interface Beyond {
  readonly column: SurveyColumn;
  readonly cell: Cell;
  readonly entry: Entry;
  readonly limit: Limit;
}

const tell = (
  block: Block,
  { column, cell, entry, limit }: Beyond,
  text: SurveyContext["text"],
): Finding => {
  const unit = column.concept === "index" ? undefined : column.unit;
  const said = [
    written(cell.number ?? 0, unit),
    limit.side,
    written(limit.number, unit && limit.unit),
    text.statedAt(limit.address),
  ] as const;
  const result = resultOf(entry);
  return findingAt(
    "survey-named-limit",
    result === "Fail" ? "note" : "stop",
    block,
    entry,
    cell.address,
    result === "Fail"
      ? text.failedAsSaid(...said)
      : result === "Pass"
        ? text.markedPass(...said, entry.beside.result?.text ?? "")
        : text.beyondLimit(...said),
    { column: column.title, found: cell.text },
  );
};

/** A value beside the readings that lies outside the bound that the workbook states for it by its name: "PI" and "PI least", "dew point ≤ -25 °C". */
export const namedLimits: SurveyRule = {
  id: "survey-named-limit",
  find: (context) =>
    context.survey.blocks.flatMap((block) =>
      besides(block).flatMap((column) => inColumn(block, column, context)),
    ),
};
