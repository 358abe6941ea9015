import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import { unitSize } from "../../quantities/units";
import type { Block, SurveyColumn } from "../find/block";
import type { Cell } from "../read/cells";
import type { Concept } from "../words/words";
import { findingAt, type SurveyContext, type SurveyRule, written } from "./rule";

/** Columns that other rules work out, or that nobody works out. */
const ASIDE: readonly (Concept | undefined)[] = [
  "corrected",
  "spread",
  "error",
  "limit",
  "minimum",
  "maximum",
  "required",
  "date",
  "temperature",
  "air",
  "humidity",
  "result",
];

/** A line of a table with the cells of its columns. */
interface Line {
  readonly row: number;
  readonly cells: readonly (Cell | undefined)[];
}

/** A column that is another through a third, but for a power of ten between their units: mV through A are mΩ. */
interface Relation {
  readonly target: number;
  readonly one: number;
  readonly other: number;
  readonly scale: number;
}

const numberAt = ({ cells }: Line, index: number) => cells[index]?.number;

/** Half the last digit of a number as it is written, and what rounded inputs bring. */
const slackOf = (cell: Cell): number => {
  const decimals = /[.,](\d+)/.exec(cell.text)?.[1]?.length ?? 0;
  return 0.6 * 10 ** -decimals + Math.abs(cell.number ?? 0) * 0.002;
};

const resultOf = ({ one, other, scale }: Relation, line: Line): number | undefined => {
  const [first, second] = [numberAt(line, one), numberAt(line, other)];
  const value = first === undefined || second === undefined ? undefined : (first / second) * scale;
  return value !== undefined && Number.isFinite(value) ? value : undefined;
};

const follows = (relation: Relation, line: Line): boolean => {
  const cell = line.cells[relation.target];
  const value = resultOf(relation, line);
  return cell?.number !== undefined && value !== undefined
    ? Math.abs(cell.number - value) <= slackOf(cell)
    : false;
};

/** The power of ten between what two columns come to and a third; undefined where it is none. */
const scaleOf = (relation: Omit<Relation, "scale">, lines: readonly Line[]): number | undefined => {
  const powers = lines.slice(0, 5).flatMap((line) => {
    const value = resultOf({ ...relation, scale: 1 }, line);
    const target = numberAt(line, relation.target);
    return value && target ? [Math.log10(Math.abs(target / value))] : [];
  });
  const middle = powers.sort((one, other) => one - other)[powers.length >> 1];
  if (middle === undefined) return undefined;
  const whole = Math.round(middle);
  return Math.abs(middle - whole) < 0.03 && [0, 2, 3, 6].includes(Math.abs(whole))
    ? 10 ** whole
    : undefined;
};

/** Lines of a table from which on a relation shows, and the share of them that have to follow it. */
const [ENOUGH, SHARE] = [4, 0.75];

const holds = (relation: Relation, lines: readonly Line[]): boolean => {
  const allowed = Math.floor(lines.length * (1 - SHARE));
  let missed = 0;
  for (const line of lines) {
    if (!follows(relation, line)) missed += 1;
    if (missed > allowed) return false;
  }
  return true;
};

/** Whether numbers say enough to show how they are worked out: several of them, with two figures and more. */
const areTelling = (lines: readonly Line[], index: number): boolean => {
  const texts = lines.flatMap(({ cells }) => cells[index]?.text ?? []);
  const telling = texts.filter((text) => text.replace(/\D|^0[.,]?0*/g, "").length >= 2);
  return new Set(texts).size >= 3 && telling.length >= texts.length * 0.6;
};

/** What a column measures; an index and a column without a unit are bare numbers. */
const quantityOf = ({ unit, concept }: SurveyColumn): string | undefined =>
  unit === undefined || concept === "index" ? undefined : unitSize(unit).quantity;

/** Whether one column through another can be a third: volts through amperes are ohms, two of a sort are a bare number. */
const canBe = (target: SurveyColumn, one: SurveyColumn, other: SurveyColumn): boolean => {
  const [sought, over, under] = [target, one, other].map(quantityOf);
  if (sought === "resistance") return over === "voltage" && under === "current";
  return (sought === undefined || sought === "share") && over === under;
};

const relationsFor = (
  target: number,
  columns: readonly SurveyColumn[],
  lines: readonly Line[],
): Relation[] => {
  const [sought] = columns.slice(target, target + 1);
  if (!sought || !areTelling(lines, target)) return [];
  const inputs = columns.flatMap((column, index) =>
    column.computed || index === target ? [] : [{ column, index }],
  );
  return inputs.flatMap(({ column: over, index: one }) =>
    inputs.flatMap(({ column: under, index: other }): Relation[] => {
      if (one === other || !canBe(sought, over, under)) return [];
      const scale = scaleOf({ target, one, other }, lines);
      const relation = scale ? { target, one, other, scale } : undefined;
      return relation && holds(relation, lines) ? [relation] : [];
    }),
  );
};

/** The same three columns tell the same thing whichever of them is worked out: the last one is, or the one that is titled so. */
const onceEach = (relations: readonly Relation[], columns: readonly SurveyColumn[]): Relation[] =>
  groupBy(relations, ({ target, one, other }) => String([target, one, other].sort())).flatMap(
    (alike) =>
      alike.find(({ target }) => columns[target]?.concept === "index") ??
      alike.toSorted((first, second) => second.target - first.target)[0] ??
      [],
  );

/** What an index is by its name: the later reading through the earlier one (IEEE Std 43: polarization index 10 min through 1 min; common practice for the absorption ratio, 60 s through 30 s). */
const INDICES: readonly { readonly name: RegExp; readonly over: RegExp; readonly under: RegExp }[] =
  [
    {
      name: /^(?:p\.?i\.?|ip|polari[sz]ation index|índice de polarización|polarisationsindex)$/iu,
      over: /^(?:r ?)?10 ?(?:min|minutes?|')\.?$/iu,
      under: /^(?:(?:r ?)?1 ?(?:min|minutes?|')|60 ?s(?:ec)?)\.?$/iu,
    },
    {
      name: /^(?:d\.?a\.?r\.?|absorption ratio)$/iu,
      over: /^(?:(?:r ?)?60 ?s(?:ec)?|1 ?min)\.?$/iu,
      under: /^(?:r ?)?30 ?s(?:ec)?\.?$/iu,
    },
  ];

const lastLine = ({ lines }: SurveyColumn) =>
  (lines.at(-1) ?? "").slice(0, 60).replace(/ ?[([].*$/u, "");

/** What the indices of a table are by their names, for tables too short to show it. */
const byName = (columns: readonly SurveyColumn[]): Relation[] =>
  columns.flatMap((column, target) => {
    const index = INDICES.find(({ name }) => name.test(lastLine(column)));
    if (!index || column.computed) return [];
    const one = columns.findIndex((other) => index.over.test(lastLine(other)));
    const other = columns.findIndex((from) => index.under.test(lastLine(from)));
    return one < 0 || other < 0 ? [] : [{ target, one, other, scale: 1 }];
  });

/** By how much an index may differ from its two readings, for their own rounding. */
const OFF = 0.03;

const isOff = (relation: Relation, line: Line): boolean => {
  const [number, value] = [numberAt(line, relation.target), resultOf(relation, line)];
  return number !== undefined && value !== undefined && Math.abs(number / value - 1) > OFF;
};

const inBlock = (block: Block, { text }: SurveyContext): Finding[] => {
  const columns = block.columns.filter(
    ({ numbers, concept }) => numbers && !["date", "result", "serial"].includes(concept ?? ""),
  );
  const lines = block.lines
    .map((row): Line => ({ row, cells: columns.map(({ at }) => block.at(row, at)) }))
    .filter(({ cells }) => cells.filter((cell) => cell?.number !== undefined).length >= 3);
  if (columns.length < 3) return [];
  if (lines.length < ENOUGH)
    return byName(columns).flatMap((relation) =>
      tell(
        block,
        columns,
        lines.filter((line) => isOff(relation, line)),
        relation,
        text,
      ),
    );
  const found = columns.flatMap((column, target) =>
    column.computed || ASIDE.includes(column.concept)
      ? []
      : relationsFor(
          target,
          columns,
          lines.filter((line) => numberAt(line, target) !== undefined),
        ),
  );
  return onceEach(found, columns).flatMap((relation) =>
    tell(block, columns, lines, relation, text),
  );
};

const tell = (
  block: Block,
  columns: readonly SurveyColumn[],
  lines: readonly Line[],
  relation: Relation,
  text: SurveyContext["text"],
): Finding[] =>
  lines.flatMap((line) => {
    const cell = line.cells[relation.target];
    const value = resultOf(relation, line);
    const column = columns[relation.target];
    const entry = block.entries.find((one) => one.line === line.row);
    if (!cell || !column || !entry || value === undefined || follows(relation, line)) return [];
    const [one, other] = [relation.one, relation.other].map((at) => `"${columns[at]?.title}"`);
    return [
      findingAt(
        "survey-quotient",
        "query",
        block,
        entry,
        cell.address,
        text.doesNotAddUp(
          column.title,
          written(cell.number ?? 0),
          written(value),
          `${one} ÷ ${other}`,
        ),
        { column: column.title, found: cell.text, expected: written(value) },
      ),
    ];
  });

/** A number that is worked out from two others of its line in most lines, and not in one: a resistance from voltage and current, an index from two readings. */
export const quotients: SurveyRule = {
  id: "survey-quotient",
  find: (context) => context.survey.blocks.flatMap((block) => inBlock(block, context)),
};
