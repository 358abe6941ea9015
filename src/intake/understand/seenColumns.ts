import { readUnit } from "../../quantities/reading/readUnit";
import { type Unit, unitSize } from "../../quantities/units";
import { operationOf } from "../words/operationIn";
import { isOneOf, schemeAmong } from "../words/readPosition";
import { splitTitle } from "../words/readTitle";
import { type Sense, sensesOf } from "../words/senses";
import { timesAcross } from "../words/timesAcross";
import { bracketless } from "../words/titles";
import { withoutWave } from "../words/wave";
import type { SeenColumn } from "./columnScore";
import type { Knowledge } from "./knowledge";
import { placedAcross } from "./placedAcross";
import { columnTexts, mostOften } from "./textsOf";
import { stacked, type TitleContext, type TitleSense, titleSense } from "./titleSense";

/** A table of an export as it stands: its lines of titles, its row of units, and its first lines. */
export interface SeenTable {
  readonly titles: readonly (readonly string[])[];
  readonly units: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** The unit that a cell of a row of units has. */
export const unitIn = (text: string): Unit | undefined => {
  const read = readUnit(withoutWave(bracketless(text.trim())));
  return read.ok ? read.value : undefined;
};

/** Each column of a table with what its title says and its cells look like. */
export const seenColumns = (
  { titles, units, rows }: SeenTable,
  objectOf: Knowledge["objectOf"],
): SeenColumn[] => {
  const width = Math.max(...titles.map((line) => line.length), 0);
  const contexts = titles.map((line) => contextOf(line, objectOf));
  const groups = titles.length - (isGrouping(titles.at(-1) ?? [], units) ? 0 : 1);
  const stack = titles.map((line, at) => (at < groups ? spread(line, width) : line));
  const seen = Array.from({ length: width }, (_, index): SeenColumn => {
    const said = stack.map((line, at) =>
      titleSense(line[index] ?? "", contexts[at] as TitleContext),
    );
    const cells = columnTexts(rows.map((cells) => cells[index] ?? ""));
    const title = withReading(withDischarge(stacked(said), cells.texts), cells);
    const told = title.unit ?? unitIn(units[index] ?? "");
    // Where the cells say otherwise, a letter of the title is no unit: "Main A" over milliseconds.
    const own = told && cells.unit && !isAlike(told, cells.unit) ? undefined : told;
    return { index, title, cells, unit: own ?? cells.unit, ...(own && { told: own }) };
  });
  return withUnitsBeside(seen);
};

/** Whether a line of titles groups the units below it: `R phase,,Y phase,` over `V,mA,V,mA`. */
const isGrouping = (line: readonly string[], units: readonly string[]): boolean => {
  const open = units.flatMap((unit, at) => (unit !== "" && !line[at] ? at : []));
  return open.length > 0 && open.every((at) => at > 0);
};

const isAlike = (one: Unit, other: Unit): boolean =>
  unitSize(one).quantity === unitSize(other).quantity;

/** Columns whose unit stands in a column beside them, mostly to the right. */
const withUnitsBeside = (columns: readonly SeenColumn[]): SeenColumn[] => {
  const unitOf = ({ cells }: SeenColumn): Unit | undefined => {
    const read = cells.texts.map((text) => readUnit(bracketless(text)));
    return cells.numeric === 0 && read.length > 0 && read.every(({ ok }) => ok)
      ? mostOften(read.flatMap((one) => (one.ok ? one.value : [])))
      : undefined;
  };
  // A letter under "Phase" is no ampere.
  const units = columns.filter(
    (column) => !column.title.senses.has("phase") && unitOf(column) !== undefined,
  );
  const beside = units.find(({ title }) => title.senses.has("unit")) ?? units[0];
  const unit = beside && unitOf(beside);
  const isOpen = (column: SeenColumn) => column.unit === undefined && column.cells.numeric >= 0.5;
  const left = columns.filter((column) => beside && column.index < beside.index && isOpen(column));
  const to = left.length > 0 ? left : columns.filter(isOpen);
  return columns.map((column) => (unit && to.includes(column) ? { ...column, unit } : column));
};

/** No heading that says what stands below is longer. */
const LONGEST_HEADING = 60;

/**
 * Phases, panels and times across whose titles say nothing else hold what the line right over them says:
 * `Leakage, milliamps`; or else the title of the names that stand before them: `R 1 min (GΩ)`.
 */
export const underHeading = (
  columns: readonly SeenColumn[],
  heading: string | undefined,
): SeenColumn[] => {
  const isBare = ({ title, unit }: SeenColumn) =>
    [title.position, title.object, title.seconds].some((part) => part !== undefined) &&
    title.words.length === 0 &&
    unit === undefined;
  if (!columns.some(isBare)) return [...columns];
  const over = overBare(columns, heading);
  if (over?.unit === undefined) return [...columns];
  return columns.map((column) =>
    isBare(column)
      ? { ...column, title: stacked([over, column.title]), unit: over.unit, told: over.unit }
      : column,
  );
};
/** What the line over a table, or the title of its names, says of the columns that say nothing themselves. */
const overBare = (
  columns: readonly SeenColumn[],
  heading: string | undefined,
): TitleSense | undefined => {
  const over =
    heading === undefined || heading.length > LONGEST_HEADING
      ? undefined
      : titleSense(heading, { letters: new Set(), ends: "", objectOf: () => undefined });
  const isSaid =
    over?.unit !== undefined &&
    over.unknown === 0 &&
    [...over.senses].some((sense) => MEASURED.has(sense));
  if (isSaid) return over;
  const names = columns.filter(
    ({ title, cells }) => title.unit !== undefined && cells.texts.length > 0 && cells.numeric === 0,
  );
  return names.length === 1 ? names[0]?.title : undefined;
};

const MEASURED: ReadonlySet<Sense> = new Set<Sense>([
  "resistance",
  "insulation",
  "current",
  "leakage",
  "voltage",
  "time",
  "timing",
  "torque",
]);

/** Whether an answer speaks of a discharge, or of having been withstood. */
const tellsOfDischarge = (text: string): boolean => {
  const { senses } = sensesOf(text);
  return senses.has("discharge") || senses.has("withstand");
};

/** A title that says no more than "result", over cells that all speak of a discharge, speaks of it too. */
const withDischarge = (title: TitleSense, texts: readonly string[]): TitleSense => {
  const isOpen = [...title.senses].every((sense) => sense === "result" || sense === "state");
  return isOpen && texts.length > 0 && texts.every(tellsOfDischarge)
    ? {
        ...title,
        senses: new Set([...title.senses, "discharge"]),
        words: [...title.words, { text: "", senses: ["discharge"] }],
      }
    : title;
};

/** A title that says no more than "result", over numbers, is that of the reading. */
const withReading = (title: TitleSense, { numeric, texts }: SeenColumn["cells"]): TitleSense => {
  const isResult =
    title.senses.has("result") &&
    title.unknown === 0 &&
    [...title.senses].every((sense) => sense === "result" || sense === "test");
  return isResult && texts.length > 0 && numeric >= 0.8
    ? { ...title, senses: new Set(["reading"]), words: [{ text: "", senses: ["reading"] }] }
    : title;
};

/** A line of titles that group those below: each holds for the blank cells to its right. */
const spread = (line: readonly string[], width: number): string[] => {
  let group = "";
  return Array.from({ length: width }, (_, at) => {
    const own = line[at] ?? "";
    if (own !== "") group = own;
    return group;
  });
};

const contextOf = (line: readonly string[], objectOf: Knowledge["objectOf"]): TitleContext => {
  const upper = line.map((title) => title.toUpperCase());
  const digits = ["1", "2", "3"].every((pole) => line.includes(pole));
  const schemed = schemeAmong(upper) ?? "";
  const nameOf = (title: string) => splitTitle(withoutBrackets(title)).name;
  const names = line.map((title) => nameOf(title).toUpperCase());
  const named = schemeAmong(names) ?? "";
  const ends = schemeAmong(
    line.map((title) => withoutBrackets(title).split(" ").at(-1)?.toUpperCase() ?? ""),
  );
  const starts = schemeAmong(upper.map((title) => title.split(" ")[0] ?? ""));
  const beforeUnits = schemeAmong(names.map((name) => name.split(" ").at(-1) ?? ""));
  const stems = line.flatMap((title) => [
    ...new Set([...stemsOf(withoutBrackets(title)), ...stemsOf(nameOf(title))]),
  ]);
  const isLetter = (title: string, at: number) =>
    isOneOf(schemed, title.toUpperCase()) ||
    (digits && /^[123]$/.test(title)) ||
    isOneOf(named, names[at] ?? "");
  const objects = new Set(line.flatMap((title) => objectOf(title) ?? []));
  return {
    letters: new Set(line.flatMap((title, at) => (isLetter(title, at) ? nameOf(title) : []))),
    ends: ends ?? starts ?? beforeUnits ?? named,
    stems: new Set(stems.filter((stem, at) => stems.indexOf(stem) !== at)),
    hasClosing: line.some((title) => operationOf(sensesOf(title).senses) === "closing"),
    // One title that is a panel's name may be anything; several are panels across.
    objectOf: objects.size > 1 ? objectOf : () => undefined,
    placed: placedAcross(line, objectOf),
    times: new Map([...timesAcross(line)].map(([at, seconds]) => [line[at] ?? "", seconds])),
  };
};

/** What a title says besides a letter at its end or its beginning: of titles by phase it comes again. */
const stemsOf = (title: string): string[] => {
  const words = title.toUpperCase().split(" ");
  return [
    ...(words.at(-1)?.length === 1 ? [words.slice(0, -1).join(" ")] : []),
    ...(words[0]?.length === 1 ? [words.slice(1).join(" ")] : []),
  ];
};

/** A title, which nobody writes longer, without what stands in brackets at its end. */
const withoutBrackets = (title: string): string => title.slice(0, 200).replace(BRACKETS, "").trim();

const BRACKETS = /\s*[([][^()[\]]*[)\]]\s*$/;
