import { convert } from "../../quantities/convert";
import { type Unit, unitSize } from "../../quantities/units";
import type { Column } from "../../records/kind";
import { areTicks, listWord, ticked } from "../cells/listWord";
import type { SensedWord } from "../words/senses";
import { COLUMN_SENSES, NEUTRAL, TELLING } from "./columnSenses";
import type { ColumnTexts } from "./textsOf";
import { foreignKey, type TitleSense } from "./titleSense";
import type { ColumnSense } from "./waysOf";

/** A column of an export, as far as its title and its cells say what it holds. */
export interface SeenColumn {
  readonly index: number;
  readonly title: TitleSense;
  readonly cells: ColumnTexts;
  /** Its unit: of the title, the row of units, or its cells. */
  readonly unit?: Unit;
  /** The same where something outside its cells tells it, so that it holds for numbers without a unit. */
  readonly told?: Unit;
}

export const senseOf = (kind: string, id: string): ColumnSense | undefined =>
  COLUMN_SENSES[kind]?.[id] ?? COLUMN_SENSES["*"]?.[id];

/** From this on a column is taken for what its title says; below, only where nothing else is left. */
export const SURE = 1.5;

/**
 * How well a column of an export goes with a column of the records: by the words of its title, by its
 * unit, by the times that it names, and by whether its cells can be that. Undefined where they cannot.
 */
export const columnScore = (seen: SeenColumn, kind: string, column: Column): number | undefined => {
  const sense = senseOf(kind, column.id);
  if (sense === undefined || !isOfQuantity(seen, column)) return undefined;
  if (isElse(seen, column, sense)) return undefined;
  const byCells = cellScore(seen, column, sense);
  const byTime = timeScore(seen.title, sense, column);
  if (byCells === undefined || byTime === undefined) return undefined;
  if (!isAtMultiple(seen.title, sense)) return undefined;
  const byWords = wordScore(seen, sense, byTime > 0);
  return byWords === undefined ? undefined : byWords + byTime + byCells;
};

/** Units that rows name themselves, of readings that are not converted. */
const IN_ROWS: ReadonlySet<string> = new Set(["m/s", "dbmv", "dbuv"]);

const isOfQuantity = ({ unit, cells, title }: SeenColumn, column: Column): boolean => {
  const { foreign } = title;
  if (foreign !== undefined)
    return column.unitIn === undefined
      ? foreignKey(column.header).endsWith(foreign)
      : IN_ROWS.has(foreign);
  if (column.unitIn !== undefined || unit === undefined) return true;
  if (column.unit === undefined) return column.accepts?.type === "text" || cells.numeric < 0.5;
  return unitSize(unit).quantity === unitSize(column.unit).quantity;
};

/** Whether the cells can be what the column takes: numbers of its size, words of its list, names. */
const cellScore = (
  { cells, unit }: SeenColumn,
  column: Column,
  { usual }: ColumnSense,
): number | undefined => {
  const { texts, numeric, dates } = cells;
  if (texts.length === 0) return 0;
  const { accepts } = column;
  if (accepts?.type === "list") return listScore(cells, accepts);
  if (accepts?.type === "date") return dates < 0.6 ? undefined : 0.5;
  if (accepts?.type !== "number" && accepts?.type !== "reading")
    return numeric > 0.5 || dates > 0.5 ? undefined : 0;
  if (numeric < 0.5) return undefined;
  return sizeScore(cells.values, unit, column, usual);
};

/** Whether texts are words of a list; words of the file's own are told at their lines, or said with what they mean. */
const listScore = (
  { texts, numeric, dates }: ColumnTexts,
  list: Extract<Column["accepts"], { type: "list" }>,
): number | undefined => {
  const words = areTicks(texts) ? texts.map(ticked) : texts;
  const known = words.filter((text) => listWord(text, list) !== undefined).length;
  if (known / texts.length >= 0.6) return 0.5;
  return numeric > 0.5 || dates > 0.5 ? undefined : -0.5;
};

/** Whether numbers are of the usual size, where their unit is told: far from it they are something else. */
const sizeScore = (
  values: readonly number[],
  unit: Unit | undefined,
  column: Column,
  usual: ColumnSense["usual"],
): number | undefined => {
  if (usual === undefined || unit === undefined || column.unit === undefined) return 0;
  const [least, most] = usual;
  const target = column.unit;
  const share = (isIn: (value: number) => boolean) =>
    values.filter((value) => {
      const read = convert(value, unit, target);
      return read.ok && isIn(read.value);
    }).length / values.length;
  if (values.length === 0 || share((value) => value >= least && value <= most) >= 0.5) return 0.25;
  const isFar = (value: number) => value !== 0 && (value < least / FAR || value > most * FAR);
  return share(isFar) >= 0.5 ? undefined : -1;
};

/** Whether all values are of what a column never holds unless its title says so: the air's pressure, of a gas pressure. */
const isElse = (
  { title, cells, unit }: SeenColumn,
  column: Column,
  { unlessSaid }: ColumnSense,
): boolean => {
  if (unlessSaid === undefined || title.senses.has(unlessSaid.sense)) return false;
  const [least, most] = unlessSaid.between;
  const target = column.unit;
  return (
    unit !== undefined &&
    target !== undefined &&
    cells.values.length > 0 &&
    cells.values.every((value) => {
      const read = convert(value, unit, target);
      return read.ok && read.value >= least && read.value <= most;
    })
  );
};

/** Beyond the usual by so many times, a number is of something else. */
const FAR = 1000;

/** Whether a title names the multiple of U0 that a column is read at, with its unit, and no other names one. */
const isAtMultiple = ({ ofU0, foreign }: TitleSense, { ofU0: own }: ColumnSense): boolean =>
  own === undefined ? ofU0 === undefined || ofU0 === 1 : ofU0 === own && foreign !== undefined;

/** What a title's time says: that of the column, none, or another. */
const timeScore = (
  { seconds }: TitleSense,
  { seconds: own }: ColumnSense,
  { unit }: Column,
): number | undefined => {
  const isTimed =
    own !== undefined || (unit !== undefined && unitSize(unit).quantity === "resistance");
  if (!isTimed) return 0;
  const wanted = own ?? 60;
  if (seconds === undefined) return wanted === 60 ? 0 : undefined;
  return seconds === wanted ? 1.5 : undefined;
};

const isTelling = ({ senses }: SensedWord): boolean =>
  senses.some((sense) => TELLING.has(sense)) && !senses.some((sense) => NEUTRAL.has(sense));

/** How far the words of a title say what a column is; with its unit alone it may be that, and no more. */
const wordScore = (
  { title, unit }: SeenColumn,
  { any }: ColumnSense,
  isTimed: boolean,
): number | undefined => {
  const { senses, words, unknown } = title;
  const scores = any.flatMap((way) => {
    if (!way.every((sense) => senses.has(sense)) || (way.length === 0 && unknown > 0)) return [];
    // A word of several meanings counts for the one that is looked for.
    const others = words.filter((word) => !word.senses.some((sense) => way.includes(sense)));
    if (others.some(isTelling)) return [];
    const beside = others.filter((word) => !word.senses.some((sense) => NEUTRAL.has(sense)));
    if (way.length === 0 && beside.length > 0) return [];
    return [1.5 + 0.75 * way.length - 0.4 * beside.length - 0.3 * unknown];
  });
  if (scores.length > 0) return Math.max(...scores);
  const isSilent = words.every((word) => word.senses.some((sense) => NEUTRAL.has(sense)));
  if (isSilent && isTimed) return 1.5 - 0.3 * unknown;
  if (isSilent && unit !== undefined && unknown === 0) return 1;
  return isSilent && unit !== undefined && unknown <= 2 ? 0.6 : undefined;
};
