import { groupBy } from "../quantities/groupedBy";
import { readUnit } from "../quantities/readUnit";
import { type Unit, unitSize } from "../quantities/units";
import type { Stage, SurveyColumn } from "./block";
import { type Cell, isValue, type SheetView } from "./cells";
import {
  areBounds,
  areMeasured,
  arePlaces,
  areUnits,
  areWords,
  byCells,
  conceptByValues,
  unitOfCells,
  WORDS,
} from "./conceptUnder";
import type { FoundTable } from "./findTables";
import { withoutWave } from "./localWords";
import { areNames, namesAmong, phasesAmong, positionsAmong } from "./phases";
import { POINT_OF_TIME } from "./pointOfTime";
import { isUnitText, unitIn } from "./unitIn";
import { conceptOf, hasWord, isWord } from "./words/sheetWords";
import type { Concept } from "./words/words";

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

/** Whether words speak of before or after the withstand test; the last that do count. */
export const stageIn = (texts: readonly string[]): Stage | undefined => {
  for (const text of texts.toReversed()) {
    const [before, after] = [hasWord(text, "before"), hasWord(text, "after")];
    if (before !== after) return before ? "before" : "after";
  }
  return undefined;
};

/** Whether words speak of closing or of opening. */
export const operationIn = (texts: readonly string[]): SurveyColumn["operation"] => {
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

/** The quantity that a column of a concept has. */
const QUANTITY_OF: Readonly<Partial<Record<Concept, string>>> = {
  temperature: "temperature",
  air: "temperature",
  leakage: "current",
  voltage: "voltage",
  current: "current",
  duration: "time",
};

/** "60 s / 30 s", "R10/R1": one reading over an earlier one. */
const RATIO_OF_TIMES =
  /^(?:r ?)?\d+ ?(?:s|sec|min|minutes?)?\.? ?[/÷:] ?(?:r ?)?\d+ ?(?:s|sec|min|minutes?)\.?(?: ratio)?$|^r ?\d+ ?[/÷:] ?r ?\d+$/i;

/** Titles of the two ends of what is allowed, where they carry a unit: "from (ms)", "to (ms)". */
const RANGE_FROM = /^(?:from|von|de|du|desde)(?![\p{L}\p{N}])(?:[\s([].*)?$/iu;
const RANGE_TO = /^(?:to|bis|à|au|hasta|até)(?![\p{L}\p{N}])(?:[\s([].*)?$/iu;

/** Titles that are known by their form. */
const FORMS: readonly {
  readonly form: RegExp;
  readonly concept: Concept;
  readonly needsUnit?: true;
}[] = [
  { form: POINT_OF_TIME, concept: "reading" },
  { form: /^IP$/, concept: "index" },
  { form: RATIO_OF_TIMES, concept: "index" },
  { form: RANGE_FROM, concept: "minimum", needsUnit: true },
  { form: RANGE_TO, concept: "maximum", needsUnit: true },
];

/** A bound in brackets behind what it is for: "Contact resistance, µΩ (max 60)". */
const BRACKETED_BOUND =
  /(?<=\S)\s*[([](?=[^)\]]*\d)(?:[<>≤≥]|m[aá]x|m[ií]n|limit|at least|at most|mind|höchst)[^()[\]]*[)\]]/iu;

/** The bound that a title has in brackets; undefined where it has none. */
export const boundInTitle = (title: string): string | undefined =>
  BRACKETED_BOUND.exec(title.slice(0, 300))?.[0];

/** What a title says, where its unit does not contradict it. */
const conceptOfTitle = (written: string, unit: Unit | undefined): Concept | undefined => {
  const title = written.slice(0, 300).replace(BRACKETED_BOUND, "");
  const formed = FORMS.find(
    ({ form, needsUnit }) => form.test(title) && (unit !== undefined || !needsUnit),
  );
  if (formed) return formed.concept;
  const concept = conceptOf(title);
  // "Temps attendu s" beside "Temps mesuré s" are no durations of a test.
  if (concept === "duration" && EXPECTED.test(title)) return "required";
  if (concept === "duration" && MEASURED.test(title)) return "reading";
  // The least voltage at which a breaker closes or opens is measured.
  if (concept === "minimum" && unit === "V" && operationIn([title]) !== undefined) return "reading";
  if (concept === undefined || unit === undefined) return concept;
  if (concept === "time" && unitSize(unit).quantity === "time") return "duration";
  if (WORDS.includes(concept)) return "reading";
  const quantity = QUANTITY_OF[concept];
  if (quantity === undefined || unitSize(unit).quantity === quantity) return concept;
  return conceptOfUnit(unit) ?? "reading";
};

/** What a unit alone tells of a column. */
const conceptOfUnit = (unit: Unit | undefined): Concept | undefined => {
  if (unit === "kV") return "voltage";
  if (unit === "mA" || unit === "µA") return "leakage";
  if (unit === "s" || unit === "min") return "duration";
  return unit === "°C" || unit === "°F" ? "temperature" : undefined;
};

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

/** Words of what a relay or a breaker should do. */
const EXPECTED =
  /expected|calculated|theor|erwartet|soll|attendu|théor|esperad|teóric|previst|متوقع/iu;

/** Words of a column that sums up its line, and is no limit for all that it is called the lowest. */
const AGGREGATES = /(?:^|[^A-Z])(?:MIN|MAX|AVERAGE|SUM|SMALL|LARGE|MEDIAN|COUNT)\w*\(/i;
const MEASURED = /measured|medid[oa]|gemessen|mesuré|found|of the|worst|encontrad|المقاس/iu;

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
  return isLimit && sumsUp(own, cells) ? undefined : byCells(told, cells);
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
      !areMeasured(under(at)),
  );
  const names = hasPanel
    ? undefined
    : titled.find(
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
  const panels = panelsAmong(titled);
  const named = titled.map((column) => ({
    ...nameColumn(column, under(column.at), { phases, letters, anyLetters }, column === names),
    ...panels(column),
  }));
  // Where a column is titled as the result of readings, other columns of such words are something else.
  const isTitled = ({ title, concept }: SurveyColumn) =>
    concept === "result" && conceptOf(title) === "result";
  const isMeasured = ({ concept, numbers, unit }: SurveyColumn) =>
    numbers && (unit !== undefined || concept === "reading" || concept === "voltage");
  return named.some(isTitled) && named.some(isMeasured)
    ? named.map((column) =>
        column.concept === "result" &&
        !isTitled(column) &&
        conceptOf(phaseTitle(column)) !== "result"
          ? { ...column, concept: undefined }
          : column,
      )
    : named;
}

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

/** The unit of a title; "between main earth bar and" over words has none, "IR megohms" over the lines' names has that of its lines. */
const unitOver = (unit: Unit | undefined, cells: readonly Cell[]): Unit | undefined => {
  const isTalk = areWords(cells) && !cells.some(({ number }) => number !== undefined);
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
  const readers = new Map([...byUnit].map(([unit, titles]) => [unit, positionsIn(titles)]));
  return (unit, text) => readers.get(unit)?.(text);
};

/** A time as a title, "1 min", is no phase. */
const isTime = (text: string) => /^\d+(?:[.,]\d+)? ?(?:s|sec|min)\b/i.test(text);

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

/** Titles with a word in common, each with its phase; none where one of the words is no phase. */
const phasesOfGroup = (
  group: readonly { readonly title: string; readonly phase: string }[],
): readonly (readonly [title: string, position: string])[] => {
  const read = positionsAmong(group.map(({ phase }) => phase));
  const named = group.flatMap(({ title, phase }) => {
    const position = isPlainNumber(phase) ? undefined : read(phase);
    return position === undefined ? [] : [[title, position] as const];
  });
  const isEach = new Set(named.map(([, position]) => position)).size === group.length;
  return group.length > 1 && isEach ? named : [];
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
