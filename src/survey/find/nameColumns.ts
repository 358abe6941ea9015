import { groupBy } from "../../quantities/groupedBy";
import { readUnit } from "../../quantities/reading/readUnit";
import { type Unit, unitSize } from "../../quantities/units";
import { type Cell, isValue, type SheetView } from "../read/cells";
import { conceptOfTitle, conceptOfUnit, MEASURED } from "../understand/conceptOfTitle";
import {
  areBounds,
  areMeasured,
  areOperations,
  arePlaces,
  areUnits,
  areWords,
  byCells,
  conceptByValues,
  unitOfCells,
} from "../understand/conceptUnder";
import { withoutWave } from "../understand/localWords";
import { areNames, namesAmong, phasesAmong, positionsAmong } from "../understand/phases";
import { operationIn, stageIn } from "../understand/stageIn";
import { isUnitText, unitIn } from "../understand/unitIn";
import { conceptOf, isWord } from "../words/sheetWords";
import type { Concept } from "../words/words";
import type { SurveyColumn } from "./block";
import { withBounded } from "./boundedColumns";
import type { FoundTable } from "./findTables";
import { withErrorsOf } from "./formulaColumns";
import { classOf } from "./kindOf";

/** The lines of a column's title from the top, each once. */
const linesOf = (view: SheetView, { top, head, left }: FoundTable, at: number): string[] => {
  const lines: string[] = [];
  for (let row = top; row <= head; row++) {
    const own = view.shown(row, at);
    // Group titles that are not joined over their columns stand over the first of them.
    const isUnder = own === undefined && row < head && view.shown(head, at) !== undefined;
    const cell = own ?? (isUnder ? groupLeftOf(view, row, head, at, left) : undefined);
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

/** A title without its unit and its stage: what is left may be a phase. */
const bareTitle = (text: string) =>
  text
    .replace(/[([][^()[\]]*[)\]]/g, " ")
    .split(/[\s,;:]+/)
    .filter((word) => word !== "" && !(word.length > 1 && readUnit(word).ok))
    .join(" ")
    .trim();

/** Concepts whose columns hold numbers; words under such a title are something else. */
const NUMBERS: readonly Concept[] = [
  "duration",
  "voltage",
  "current",
  "leakage",
  "temperature",
  "air",
  "humidity",
  "factor",
  "corrected",
  "primary",
  "secondary",
];

/** Words of a column that sums up its line, and is no limit for all that it is called the lowest. */
const AGGREGATES = /(?:^|[^A-Z])(?:MIN|MAX|AVERAGE|SUM|SMALL|LARGE|MEDIAN|COUNT)\w*\(/i;

interface Titled {
  readonly at: number;
  readonly lines: readonly string[];
}

/** What a column is about whose title tells nothing, or what its cells are not. */
const conceptOfUntitled = (
  told: Concept | undefined,
  unit: Unit | undefined,
  cells: readonly Cell[],
): Concept | undefined => {
  if (told === undefined && areOperations(cells)) return "operation";
  if (told === undefined && arePlaces(cells)) return "position";
  return areWords(cells) ? undefined : conceptOfUnit(unit ?? unitOfCells(cells));
};

/** What a column is about, by its title first and by what stands in it. */
const conceptOfColumn = (
  { lines, own }: Titled & { readonly own: string },
  unit: Unit | undefined,
  cells: readonly Cell[],
  isNames: boolean,
): Concept | undefined => {
  if (isNames) return "panel";
  const told = conceptOfTitle(own, unit) ?? groupConcept(lines, unit);
  if (areBounds(cells) && (told === undefined || told === "reading" || told === "required"))
    return "limit";
  if (told === undefined || (NUMBERS.includes(told) && areWords(cells)))
    return conceptByValues(cells) ?? conceptOfUntitled(told, unit, cells);
  const isLimit = told === "minimum" || told === "maximum" || told === "limit";
  if (isLimit && sumsUp(own, cells)) return undefined;
  return told === "corrected" && areExtremes(cells) ? undefined : byCells(told, cells);
};

/** An extreme or a mean of other cells and nothing else: "Lowest @ 20 °C". */
const EXTREME = /^=?\(?(?:ROUND\(\s*)?(?:MIN|MAX|AVERAGE|MEDIAN)\([^()]*\)(?:,\s*\d\))?\)?$/i;

const areExtremes = (cells: readonly Cell[]): boolean => {
  const formulas = cells.flatMap(({ formula }) => formula ?? []);
  return formulas.length > 0 && formulas.every((formula) => EXTREME.test(formula));
};

/** Whether a formula sums up other cells. */
export const isAggregate = (formula: string): boolean => AGGREGATES.test(formula);

const sumsUp = (title: string, cells: readonly Cell[]): boolean =>
  MEASURED.test(title) ||
  cells.some(({ formula }) => formula !== undefined && isAggregate(formula));

/** Titles of columns whose like names are no panels. */
const NAMED_OTHERWISE: readonly (Concept | undefined)[] = [
  "serial",
  "instrument",
  "by",
  "tester",
  "date",
  "result",
  "remarks",
];

/** Titles of running numbers. */
const NUMBERED = /^(?:ref(?:erence)?|rec(?:ord)?|entry|id|item|line)(?:[. ]*(?:no|nr|n°|#)?\.?)$/iu;

/** Whether a column numbers the lines, each by another number. */
const isNumbering = (lines: readonly string[], cells: readonly Cell[]): boolean =>
  NUMBERED.test(lines.at(-1) ?? "") && new Set(cells.map(({ text }) => text)).size === cells.length;

/** What the columns of a table are about, by their titles and what stands in them. */
export function nameColumns(view: SheetView, table: FoundTable): SurveyColumn[] {
  const { head, bottom, left, right } = table;
  const titled = Array.from(
    { length: right - left + 1 },
    (_, index): Titled => ({
      at: left + index,
      lines: linesOf(view, table, left + index),
    }),
  );
  const letters = phasesAmong(titled.map(({ lines }) => lines.at(-1) ?? ""));
  const anyLetters = phasesAmong(titled.flatMap(({ lines }) => lines));
  const phases = phasesOf(titled, letters, anyLetters);
  const under = (at: number) =>
    Array.from({ length: bottom - head }, (_, index) => view.at(head + 1 + index, at)).flatMap(
      (cell) => cell ?? [],
    );
  /** Whether a cell stands alone in its line: "Panel W1" over the lines of that panel. */
  const isBanner = (cell: Cell) =>
    !titled.some(({ at }) => at !== view.columnOf(cell) && view.at(view.rowOf(cell), at));
  const hasPanel = titled.some(
    ({ at, lines }) =>
      ["panel", "due"].includes(conceptOf(phaseLine(lines, anyLetters)) ?? "") &&
      !areUnits(under(at)) &&
      !areMeasured(under(at)) &&
      conceptByValues(under(at)) !== "result",
  );
  const named = hasPanel
    ? []
    : titled.filter(
        ({ at, lines }) =>
          !NAMED_OTHERWISE.includes(conceptOf(lines.at(-1) ?? "")) &&
          areNames(
            under(at).flatMap((cell) =>
              cell.day === undefined && cell.number === undefined && !isBanner(cell)
                ? [cell.text]
                : [],
            ),
          ),
      );
  // "Ref: IR/001, IR/002" only numbers the lines, where a column behind it names what they are of.
  const names = named.find(({ at, lines }) => !isNumbering(lines, under(at))) ?? named[0];
  const panels = panelsAmong(titled);
  const plain = titled.map((column) => ({
    ...nameColumn(column, under(column.at), { phases, letters, anyLetters }, column === names),
    ...panels(column),
  }));
  const whole = withUnits(withNumbered(withLeast(withRemarks(plain, under))));
  const measured = withStages(withHeldTimes(withMeasuredTimes(whole, under)));
  const called = withErrorsOf(view, withCalledFor(measured, under), under);
  const bounded = withBounded(called, under);
  // Where a column is titled as the result of readings, other columns of such words are something else.
  const isTitled = ({ title, concept }: SurveyColumn) =>
    concept === "result" && conceptOf(title) === "result";
  const isMeasured = ({ concept, numbers, unit }: SurveyColumn) =>
    numbers && (unit !== undefined || concept === "reading" || concept === "voltage");
  return bounded.some(isTitled) && bounded.some(isMeasured)
    ? bounded.map((column) =>
        column.concept === "result" &&
        !isTitled(column) &&
        conceptOf(phaseTitle(column)) !== "result"
          ? { ...column, concept: undefined }
          : column,
      )
    : [...bounded];
}

type Under = (at: number) => readonly Cell[];

/** Words behind the last title are remarks. */
const withRemarks = (columns: readonly SurveyColumn[], under: Under): readonly SurveyColumn[] => {
  const last = columns.at(-1);
  const isRemark =
    last !== undefined && last.title === "" && columns.length > 2 && !under(last.at).some(isValue);
  return isRemark ? [...columns.slice(0, -1), { ...last, concept: "remarks" }] : columns;
};

/** "Min" in a table that is tested with no voltage is the least value, and no time. */
const withLeast = (columns: readonly SurveyColumn[]): readonly SurveyColumn[] => {
  const isStress = columns.some(
    ({ concept }) => concept === "voltage" || concept === "leakage" || concept === "discharge",
  );
  return isStress
    ? columns
    : columns.map((column) =>
        column.concept === "duration" && /^min\.?$/iu.test(column.title)
          ? { ...column, concept: "minimum", unit: undefined }
          : column,
      );
};

/** A reading without a unit has that of the others of its group: "Alarm: set (bar) | came at". */
const withUnits = (columns: readonly SurveyColumn[]): readonly SurveyColumn[] =>
  columns.map((column) => {
    const { concept, unit, group, numbers } = column;
    if (concept !== "reading" || unit !== undefined || group === undefined || !numbers)
      return column;
    const units = new Set(
      columns.flatMap((one) => (one.group === group && one.unit ? [one.unit] : [])),
    );
    const [only] = units;
    return units.size === 1 && only ? { ...column, unit: only } : column;
  });

/** What is counted over columns of numbers: "Bolt 1", "Bolt 2", "Core 1". */
const COUNTED: readonly (Concept | undefined)[] = ["part", "position", "test", "name"];

/** Columns titled by parts of one series, with numbers under each, hold the readings of these parts. */
const withNumbered = (columns: readonly SurveyColumn[]): readonly SurveyColumn[] => {
  const isCounted = ({ concept, numbers, computed, unit }: SurveyColumn) =>
    COUNTED.includes(concept) && numbers && !computed && unit === undefined;
  const series = namesAmong(columns.filter(isCounted).map(({ lines }) => lines.at(-1) ?? ""));
  return columns.map((column) =>
    isCounted(column) && series.has(column.lines.at(-1) ?? "")
      ? { ...column, concept: "reading" as const }
      : column,
  );
};

const isInTime = ({ unit }: SurveyColumn) =>
  unit !== undefined && unitSize(unit).quantity === "time";

/** Times beside the times that are expected are measured, and no durations of a test. */
const withMeasuredTimes = (
  columns: readonly SurveyColumn[],
  under: Under,
): readonly SurveyColumn[] =>
  columns.some((column) => column.concept === "required" && isInTime(column))
    ? columns.map((column) =>
        column.concept === "duration" && isInTime(column) && areMeasured(under(column.at))
          ? { ...column, concept: "reading" as const }
          : column,
      )
    : columns;

/** Whether a column tells at how many kilovolts a line was tested. */
const isLevel = ({ concept, unit }: SurveyColumn) => concept === "voltage" && unit === "kV";

/** Seconds and minutes of each phase beside a level are how long it was held: "kV | Red, s | Yellow, s". */
const withHeldTimes = (columns: readonly SurveyColumn[]): readonly SurveyColumn[] =>
  columns.some(isLevel)
    ? columns.map((column) =>
        column.concept === "reading" &&
        column.position !== undefined &&
        column.operation === undefined &&
        (column.unit === "s" || column.unit === "min")
          ? { ...column, concept: "duration" as const }
          : column,
      )
    : columns;

/** Insulation at both sides of a level was measured before and after it: "IR in | kV | s | IR out". */
const withStages = (columns: readonly SurveyColumn[]): readonly SurveyColumn[] => {
  const isInsulation = ({ concept, unit, computed, numbers }: SurveyColumn) =>
    numbers &&
    !computed &&
    (concept === "reading" || concept === undefined) &&
    unit !== undefined &&
    classOf(unit) === "high resistance";
  const found = columns.filter(isInsulation);
  const level = columns.find(isLevel);
  if (!level || found.some(({ stage }) => stage !== undefined)) return columns;
  const places = (is: (column: SurveyColumn) => boolean) =>
    found
      .filter(is)
      .map(({ position }) => position ?? "")
      .join("|");
  const before = places(({ at }) => at < level.at);
  const isBoth =
    found.length % 2 === 0 && found.length > 0 && before === places(({ at }) => at > level.at);
  return isBoth
    ? columns.map((column) =>
        found.includes(column)
          ? { ...column, stage: column.at < level.at ? ("before" as const) : ("after" as const) }
          : column,
      )
    : columns;
};

/** Of two columns of torques the first is what was called for, where it says the same again and again. */
const withCalledFor = (columns: readonly SurveyColumn[], under: Under): readonly SurveyColumn[] => {
  const torques = columns.filter(
    ({ concept, unit, position, stage, computed }) =>
      concept === "reading" &&
      unit !== undefined &&
      unitSize(unit).quantity === "torque" &&
      position === undefined &&
      stage === undefined &&
      !computed,
  );
  const [first, second] = torques;
  if (!first || !second || torques.length > 2) return columns;
  const [called, applied] = [first, second].map(({ at }) => {
    const texts = under(at).map(({ text }) => text);
    return { lines: texts.length, several: new Set(texts).size };
  });
  const isCalled =
    called !== undefined &&
    applied !== undefined &&
    called.several < applied.several &&
    called.several <= called.lines / 2;
  return isCalled
    ? columns.map((column) => (column === first ? { ...column, concept: "required" } : column))
    : columns;
};

/** Panels named over their columns, each over more than one: "+E1" over "U [V]" and "I [mA]". */
const panelsAmong = (titled: readonly Titled[]): ((column: Titled) => { panel?: string }) => {
  const groups = titled.flatMap(({ lines }) => (lines.length > 1 ? lines.slice(0, -1) : []));
  const series = namesAmong(groups);
  const counted = [...series].filter((name) => groups.filter((one) => one === name).length > 1);
  return ({ lines }) => {
    const panel = lines.slice(0, -1).find((line) => counted.includes(line));
    return counted.length >= 2 && panel !== undefined ? { panel } : {};
  };
};

const phaseTitle = ({ title, group }: SurveyColumn) => title.slice(group?.length ?? 0).trim();

interface Letters {
  readonly phases: PhaseReader;
  /** Phase letters among the last lines of the titles, and among all of them. */
  readonly letters: ReadonlySet<string>;
  readonly anyLetters: ReadonlySet<string>;
}

/** What a column of one phase is about: its group tells of errors and the like, words in it of no reading. */
const conceptOfLetter = (
  lines: readonly string[],
  unit: Unit | undefined,
  cells: readonly Cell[],
): Concept | undefined => {
  const group = groupConcept(lines.slice(0, -1), unit);
  if (group !== undefined && GROUPED.includes(group)) return group;
  return areWords(cells) && !cells.some(({ number }) => number !== undefined)
    ? conceptByValues(cells)
    : "reading";
};

/** Groups of columns, one a phase, that hold no readings. */
const GROUPED: readonly Concept[] = ["corrected", "spread", "change", "error", "leakage"];

const nameColumn = (
  column: Titled,
  cells: readonly Cell[],
  { phases, letters, anyLetters }: Letters,
  isNames: boolean,
): SurveyColumn => {
  const { at, lines } = column;
  const values = cells.filter(isValue);
  const unit = unitOver(unitOfTitle(lines, letters), cells);
  const own = phaseLine(lines, anyLetters);
  const isLetter = letters.has(lines.at(-1) ?? "");
  const named = isLetter ? undefined : conceptOfTitle(own, unit);
  const isPlace = (named === undefined || PHASED.includes(named)) && !isTime(own);
  const position = isPlace ? phases(unit, bareTitle(own)) : undefined;
  const told = isLetter
    ? conceptOfLetter(lines, unit, cells)
    : conceptOfColumn({ ...column, own }, unit, cells, isNames);
  const formulas = cells.filter(({ formula }) => formula !== undefined).length;
  return {
    at,
    title: lines.join(" "),
    lines,
    ...(lines.length > 1 ? { group: lines[0] } : {}),
    concept:
      position !== undefined && !isLetter && !ASIDE.includes(told) ? conceptOfPlace(unit) : told,
    unit: unit ?? unitOfCells(values),
    ...(position === undefined ? {} : { position }),
    stage: stageIn(lines),
    operation: isOperated(unit) ? operationIn(lines) : undefined,
    computed: values.length > 0 && formulas > values.length * 0.6,
    numbers: cells.filter(({ number }) => number !== undefined).length >= cells.length * 0.4,
  };
};

/** Units that are words as well. */
const WORDED: readonly string[] = ["pressure", "length"];

/** The unit of a title; "between main earth bar and" over words and "Meter" over "IT-2" have none, "IR megohms" over the lines' names has that of its lines. */
const unitOver = (unit: Unit | undefined, cells: readonly Cell[]): Unit | undefined => {
  const isTalk = cells.length > 1 && !cells.some(({ number }) => number !== undefined);
  return unit && isTalk && WORDED.includes(unitSize(unit).quantity) ? undefined : unit;
};

/** What stands under a phase: the level of a withstand test, or a reading. */
const conceptOfPlace = (unit: Unit | undefined): Concept => (unit === "kV" ? "voltage" : "reading");

/** Quantities of closing and opening. */
const OPERATED: readonly string[] = ["time", "voltage", "current"];
const isOperated = (unit: Unit | undefined) =>
  unit === undefined || OPERATED.includes(unitSize(unit).quantity);

type PhaseReader = (unit: Unit | undefined, text: string) => string | undefined;

/** Phases are known among the titles of one unit: "R (GΩ)" beside "T (°C)" are no phases. */
const phasesOf = (
  titled: readonly Titled[],
  letters: ReadonlySet<string>,
  anyLetters: ReadonlySet<string>,
): PhaseReader => {
  const byUnit = new Map<Unit | undefined, string[]>();
  for (const { lines } of titled) {
    const unit = unitOfTitle(lines, letters);
    byUnit.set(unit, [...(byUnit.get(unit) ?? []), bareTitle(phaseLine(lines, anyLetters))]);
  }
  const all = [...byUnit.values()].flat();
  const readers = new Map(
    [...byUnit].map(([unit, titles]) => [
      unit,
      positionsIn(titles.filter((title) => !isOverUnit(title, all))),
    ]),
  );
  return (unit, text) => (isOverUnit(text, all) ? undefined : readers.get(unit)?.(text));
};

/** Two letters parted by a stroke: two phases, or a quantity over its unit. */
const STROKE = /^(\p{L}) ?\/ ?(\p{L})$/u;

/** Whether a title is a quantity over its unit, "t / s" or "U / V": no other title has its letters for phases. */
const isOverUnit = (title: string, titles: readonly string[]): boolean => {
  const [, quantity = "", unit = ""] = STROKE.exec(title) ?? [];
  if (unit === "" || !readUnit(unit).ok) return false;
  const others = titles.flatMap((other) => (other === title ? [] : [STROKE.exec(other) ?? []]));
  const letters = others.flatMap(([, one = "", other = ""]) => [one, other]);
  return !letters.includes(quantity) && !letters.includes(unit);
};

/** A quantity in its unit: "t in s". */
const IN_UNIT = /^\p{L} (?:in|en|em) \S{1,4}$/u;

/** A time as a title, "1 min" or "t in s", is no phase. */
const isTime = (text: string) =>
  IN_UNIT.test(text) || /^\d+(?:[.,]\d+)? ?(?:s|sec|min)\b/i.test(text);

/** A title as its phase, first or last, and what it has in common with others: "Contact B", "R phase close". */
const partsOf = (text: string): readonly (readonly [phase: string, rest: string])[] => {
  const words = text.split(" ");
  return words.length < 2
    ? []
    : [
        [words.at(-1) ?? "", words.slice(0, -1).join(" ")],
        [words[0] ?? "", words.slice(1).join(" ")],
      ];
};

/** Titles with a word in common, each with its phase; none where one of the words is no phase, and none that sums them up. */
const phasesOfGroup = (
  group: readonly { readonly title: string; readonly phase: string }[],
): readonly (readonly [title: string, position: string])[] => {
  const read = positionsAmong(group.map(({ phase }) => phase));
  const named = group.flatMap(({ title, phase }) => {
    const position = isPlainNumber(phase) ? undefined : read(phase);
    return position === undefined ? [] : [[title, position] as const];
  });
  const others = group.length - named.length;
  const sums = group.filter(({ phase }) => isWord(phase, "summary")).length;
  const isEach = new Set(named.map(([, position]) => position)).size === named.length;
  return named.length > 1 && isEach && others <= (named.length > 2 ? sums : 0) ? named : [];
};

/** Phases that titles are, or that they have beside words that several of them share. */
const positionsIn = (titles: readonly string[]): ((text: string) => string | undefined) => {
  const whole = positionsAmong(titles);
  const others = [...new Set(titles)].filter((title) => whole(title) === undefined);
  const found = new Map(
    [0, 1].flatMap((side) => {
      const parted = others.flatMap((title) => {
        const part = partsOf(title)[side];
        return part ? [{ title, phase: part[0], rest: part[1] }] : [];
      });
      return groupBy(parted, ({ rest }) => rest).flatMap(phasesOfGroup);
    }),
  );
  return (text) => whole(text) ?? found.get(text);
};

const isPlainNumber = (text: string) => /^\d+$/.test(text);

/** The unit of a title, the last line's first. */
const unitOfTitle = (lines: readonly string[], letters: ReadonlySet<string>): Unit | undefined =>
  aloneUnit(lines, letters) ??
  lines
    .toReversed()
    .map(unitIn)
    .find((found) => found !== undefined);

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
const phaseLine = (lines: readonly string[], letters: ReadonlySet<string>): string =>
  lines.findLast(
    (line, index) =>
      !isUnitText(line) ||
      (/^\p{L}$/u.test(line) && (index === 0 || letters.has(line) || lines.length < 2)),
  ) ??
  lines.at(-1) ??
  "";

/** A unit in a line of its own, a letter among them: "A" under "Current". */
const aloneUnit = (lines: readonly string[], letters: ReadonlySet<string>): Unit | undefined => {
  const last =
    lines.length > 1 && !letters.has(lines.at(-1) ?? "")
      ? readUnit(withoutWave(lines.at(-1) ?? "").replace(/^[([]|[)\]]$/g, ""))
      : undefined;
  return last?.ok ? last.value : undefined;
};

/** The group's title speaks for columns whose own lines say nothing more. */
const groupConcept = (lines: readonly string[], unit: Unit | undefined): Concept | undefined => {
  for (const line of lines.toReversed()) {
    const concept = isUnitText(line) ? undefined : conceptOfTitle(line, unit);
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

/** Whether a line of a table sums up others. */
export const isSummary = (cells: readonly Cell[]): boolean =>
  cells.slice(0, 2).some(({ text, number }) => number === undefined && isWord(text, "summary"));
