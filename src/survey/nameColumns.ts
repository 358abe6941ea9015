import { readUnit } from "../quantities/readUnit";
import { type Unit, unitSize } from "../quantities/units";
import type { Stage, SurveyColumn } from "./block";
import { type Cell, isValue, type SheetView } from "./cells";
import type { FoundTable } from "./findTables";
import { positionsAmong } from "./phases";
import { unitIn } from "./unitIn";
import { conceptOf, hasWord, isWord, verdictIn } from "./words/sheetWords";
import type { Concept } from "./words/words";

/** The lines of a column's title from the top, each once. */
const linesOf = (view: SheetView, { top, head, left }: FoundTable, at: number): string[] => {
  const lines: string[] = [];
  for (let row = top; row <= head; row++) {
    const own = view.shown(row, at);
    // Group titles that are not joined over their columns stand over the first of them.
    const cell =
      own ??
      (row < head && view.shown(head, at) ? groupLeftOf(view, row, head, at, left) : undefined);
    if (cell && cell.text !== lines.at(-1)) lines.push(cell.text);
  }
  return lines;
};

const groupLeftOf = (
  view: SheetView,
  row: number,
  head: number,
  at: number,
  left: number,
): Cell | undefined => {
  for (let beside = at - 1; beside >= left; beside--) {
    const cell = view.shown(row, beside);
    if (cell) return view.at(head, beside) === undefined ? undefined : cell;
  }
  return undefined;
};

const stageIn = (texts: readonly string[]): Stage | undefined => {
  for (const text of texts.toReversed()) {
    const [before, after] = [hasWord(text, "before"), hasWord(text, "after")];
    if (before !== after) return before ? "before" : "after";
  }
  return undefined;
};

const operationIn = (texts: readonly string[]): SurveyColumn["operation"] => {
  const text = texts.join(" ");
  const [closing, opening] = [hasWord(text, "closing"), hasWord(text, "opening")];
  return closing === opening ? undefined : closing ? "closing" : "opening";
};

/** A title without its unit and its stage: what is left may be a phase. */
const bareTitle = (text: string) =>
  text
    .replace(/[([][^()[\]]*[)\]]/g, " ")
    .split(/[\s,;:]+/)
    .filter((word) => word !== "" && !(word.length > 1 && readUnit(word).ok))
    .join(" ")
    .trim();

/** What the values of a column without a telling title are. */
const conceptByValues = (cells: readonly Cell[]): Concept | undefined => {
  if (cells.length < 2) return undefined;
  const share = (is: (cell: Cell) => boolean) => cells.filter(is).length / cells.length;
  if (share(({ day }) => day !== undefined) > 0.7) return "date";
  if (share(({ text }) => text.length > 1 && verdictIn(text) !== undefined) > 0.7) return "result";
  return undefined;
};

/** Concepts whose columns hold the readings themselves, or stand for them. */
const QUANTITY_OF: Readonly<Partial<Record<Concept, string>>> = {
  temperature: "temperature",
  air: "temperature",
  leakage: "current",
  voltage: "voltage",
  current: "current",
  duration: "time",
};

/** What a title says, where its unit does not contradict it. */
const conceptOfTitle = (title: string, unit: Unit | undefined): Concept | undefined => {
  const concept = conceptOf(title);
  if (concept === undefined) return undefined;
  const quantity = QUANTITY_OF[concept];
  if (quantity === undefined || unit === undefined) return concept;
  return unitSize(unit).quantity === quantity ? concept : "reading";
};

/** A tester is a person or an instrument: instruments have numbers. */
const testerBy = (cells: readonly Cell[]): Concept =>
  cells.filter(({ text }) => /\d/.test(text)).length > cells.length / 2 ? "instrument" : "by";

/** The unit that most cells of a column carry themselves. */
export const unitOfCells = (cells: readonly Cell[]): Unit | undefined => {
  const counts = new Map<Unit, number>();
  for (const { unit } of cells) if (unit) counts.set(unit, (counts.get(unit) ?? 0) + 1);
  const [most] = [...counts].sort((one, other) => other[1] - one[1]);
  return most && most[1] >= cells.length / 2 ? most[0] : undefined;
};

/** What the columns of a table are about, by their titles and what stands in them. */
export function nameColumns(view: SheetView, table: FoundTable): SurveyColumn[] {
  const { head, bottom, left, right } = table;
  const titled = Array.from({ length: right - left + 1 }, (_, index) => ({
    at: left + index,
    lines: linesOf(view, table, left + index),
  }));
  const byUnit = new Map<Unit | undefined, string[]>();
  for (const { lines } of titled) {
    const unit = unitOfTitle(lines);
    byUnit.set(unit, [...(byUnit.get(unit) ?? []), bareTitle(phaseLine(lines))]);
  }
  const phases = new Map([...byUnit].map(([unit, titles]) => [unit, positionsAmong(titles)]));
  return titled.map(({ at, lines }): SurveyColumn => {
    const cells: Cell[] = [];
    for (let row = head + 1; row <= bottom; row++) {
      const cell = view.at(row, at);
      if (cell) cells.push(cell);
    }
    const values = cells.filter(isValue);
    const own = phaseLine(lines);
    const unit = unitOfTitle(lines);
    const named = conceptOfTitle(own, unit);
    const position =
      named === undefined || PHASED.includes(named)
        ? phases.get(unit)?.(bareTitle(own))
        : undefined;
    const group = lines.length > 1 ? lines[0] : undefined;
    const told = named ?? (lines.length > 1 ? groupConcept(lines, unit) : undefined);
    const concept = told ?? conceptByValues(cells);
    const computed =
      values.length > 0 &&
      cells.filter(({ formula }) => formula !== undefined).length > values.length * 0.6;
    return {
      at,
      title: lines.join(" "),
      ...(group === undefined ? {} : { group }),
      concept:
        position !== undefined && !isAside(concept)
          ? "reading"
          : concept === "tester"
            ? testerBy(cells)
            : concept,
      unit: unit ?? unitOfCells(values),
      ...(position === undefined ? {} : { position }),
      stage: stageIn(lines),
      operation: operationIn(lines),
      computed,
    };
  });
}

/** The unit of a title, the last line's first. */
const unitOfTitle = (lines: readonly string[]): Unit | undefined =>
  lines
    .toReversed()
    .map(unitIn)
    .find((found) => found !== undefined) ?? aloneUnit(lines);

/** Concepts of titles that may name a phase besides. */
const PHASED: readonly Concept[] = [
  "reading",
  "position",
  "corrected",
  "minimum",
  "maximum",
  "limit",
  "leakage",
  "temperature",
];

/** The line of a title that names the column: the last that is no unit alone. */
const phaseLine = (lines: readonly string[]): string =>
  lines.findLast(
    (line) => !readUnit(line.replace(/^[([]|[)\]]$/g, "")).ok || /^\p{L}$/u.test(line),
  ) ??
  lines.at(-1) ??
  "";

/** A unit in a line of its own, a letter among them: "A" under "Current". */
const aloneUnit = (lines: readonly string[]): Unit | undefined => {
  const last =
    lines.length > 1 ? readUnit((lines.at(-1) ?? "").replace(/^[([]|[)\]]$/g, "")) : undefined;
  return last?.ok ? last.value : undefined;
};

/** The group's title speaks for columns whose own lines say nothing more. */
const groupConcept = (lines: readonly string[], unit: Unit | undefined): Concept | undefined => {
  for (const line of lines.toReversed()) {
    const concept = conceptOfTitle(line, unit);
    if (concept) return concept;
  }
  return undefined;
};

/** Columns whose title has a phase in it and which are no readings all the same. */
const ASIDE: readonly (Concept | undefined)[] = [
  "corrected",
  "spread",
  "change",
  "error",
  "minimum",
  "maximum",
  "limit",
  "required",
  "leakage",
  "date",
  "by",
  "tester",
  "instrument",
  "result",
  "remarks",
  "temperature",
];
const isAside = (concept: Concept | undefined) => ASIDE.includes(concept);

/** Whether a line of a table sums up others. */
export const isSummary = (cells: readonly Cell[]): boolean =>
  cells.slice(0, 2).some(({ text, number }) => number === undefined && isWord(text, "summary"));
