import { readUnit } from "../../quantities/reading/readUnit";
import type { Unit } from "../../quantities/units";
import type { Cell } from "../read/cells";
import { isWord, verdictIn } from "../words/sheetWords";
import type { Concept } from "../words/words";
import { dayOf } from "./dayOf";
import { positionsAmong } from "./phases";
import { operationIn } from "./stageIn";

/** What the values of a column are, whatever its title says: names of panels, phases, dates, verdicts. */
export const conceptByValues = (cells: readonly Cell[]): Concept | undefined => {
  if (cells.length < 2) return undefined;
  const share = (is: (cell: Cell) => boolean) => cells.filter(is).length / cells.length;
  if (share(({ day }) => day !== undefined) > 0.7) return "date";
  // "ok, ok, n/a": what does not apply says nothing of the others.
  const asked = cells.filter(({ text }) => !isWord(text, "notApplicable"));
  const said = asked.filter(isVerdict).length;
  if (said >= 2 && said > asked.length * 0.7) return isOneNo(cells) ? undefined : "result";
  // One letter again and again is a mark: "Y, Y, N, Y". Phases take turns.
  const [first] = cells;
  const isMark = first !== undefined && /^(?:\p{L}|nc|so)$/iu.test(first.text);
  const usual = mostFrequent(cells.map(({ text }) => text));
  const isMarked = isMark && usual !== undefined && isTick(usual);
  return cells.length >= 3 && isMarked && share(({ text }) => text === usual) > 0.7
    ? "result"
    : undefined;
};

/** Whether nearly all say no in one word: nothing was found, and nothing failed. */
const isOneNo = (cells: readonly Cell[]): boolean => {
  const no = cells.filter(({ text, says }) => says === undefined && isWord(text, "no"));
  return no.length > cells.length * 0.7;
};

const isTick = (text: string) => /^x$/i.test(text) || verdictIn(text) === "Pass";

const mostFrequent = (texts: readonly string[]): string | undefined => {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts].sort((one, other) => other[1] - one[1])[0]?.[0];
};

const isVerdict = ({ text, says }: Cell) =>
  says !== undefined ||
  ((text.length > 1 || /^[✓✔✗✘]$/u.test(text)) && verdictIn(text) !== undefined);

/** The unit that most cells of a column carry themselves. */
export const unitOfCells = (cells: readonly Cell[]): Unit | undefined => {
  const counts = new Map<Unit, number>();
  for (const { unit } of cells) if (unit) counts.set(unit, (counts.get(unit) ?? 0) + 1);
  const [most] = [...counts].sort((one, other) => other[1] - one[1]);
  return most && most[1] >= cells.length / 2 ? most[0] : undefined;
};

/** Concepts of words: a unit in their title makes them readings. */
export const WORDS: readonly Concept[] = [
  "instrument",
  "by",
  "tester",
  "panel",
  "result",
  "remarks",
  "position",
  "part",
  "test",
  "name",
  "date",
  "serial",
  "stage",
  "operation",
];

/** Whether cells hold numbers with decimals, as readings have and names have not. */
export const areMeasured = (cells: readonly Cell[]) =>
  cells.length > 1 &&
  cells.filter(({ number, day }) => number !== undefined && day === undefined).length >
    cells.length * 0.7 &&
  cells.filter(({ value }) => typeof value === "number" && !Number.isInteger(value)).length >
    cells.length * 0.4;

const areNumbers = (cells: readonly Cell[]) =>
  cells.length > 1 &&
  cells.filter(({ number }) => number !== undefined).length > cells.length * 0.7;

/** Whether most cells state a bound by its sign: "≥ 2 GΩ". */
export const areBounds = (cells: readonly Cell[]) =>
  cells.length > 1 &&
  cells.filter(({ text }) => /^[≥≤]\s*\d/.test(text)).length > cells.length * 0.7;

/** Whether most cells begin with a phase or a combination: "R – tierra, antes". */
export const arePlaces = (cells: readonly Cell[]) => {
  if (cells.filter(({ value }) => typeof value === "number").length > cells.length * 0.3)
    return false;
  const texts = cells.map(({ text }) => (text.split(/[,;(]/)[0] ?? "").trim());
  const read = positionsAmong(texts);
  return texts.filter((text) => read(text) !== undefined).length > cells.length * 0.7;
};

/** Whether cells say closing and opening, and nothing else: "close, open, close, open". */
export const areOperations = (cells: readonly Cell[]): boolean => {
  const said = cells.map(({ text }) => (text.length <= 24 ? operationIn([text]) : undefined));
  return said.includes("closing") && said.includes("opening") && !said.includes(undefined);
};

export const areUnits = (cells: readonly Cell[]) =>
  cells.length > 1 &&
  // "Bar" with a capital is the earth bar.
  cells.filter(({ text }) => readUnit(text).ok && !/^\p{Lu}\p{Ll}{2}/u.test(text)).length >
    cells.length * 0.7;

const areDays = (cells: readonly Cell[]) =>
  cells.length > 1 && cells.filter((cell) => dayOf(cell) !== undefined).length > cells.length * 0.7;

export const areWords = (cells: readonly Cell[]) =>
  cells.length > 1 && cells.filter(({ text }) => /\d/.test(text)).length < cells.length * 0.4;

/** Concepts of names, whose columns are none where answers stand in them. */
const NAMING: readonly Concept[] = ["panel", "part", "position", "name", "test"];
const BOUNDS: readonly Concept[] = ["limit", "minimum", "maximum", "required"];

type Under = (cells: readonly Cell[]) => boolean;

const areAnswers: Under = (cells) => conceptByValues(cells) === "result";
/** Words for closing and opening one after the other, as of a duty cycle: "CO", "O-0.3s-CO". */
const DUTY = /^[COs\d.,\s–-]+$/iu;

const areInitials: Under = (cells) =>
  areWords(cells) &&
  cells.every(
    ({ text }) => text.length > 1 && !DUTY.test(text) && operationIn([text]) === undefined,
  );
const areMostly =
  (is: (cell: Cell) => boolean): Under =>
  (cells) =>
    cells.filter(is).length > cells.length / 2;
const areSmallCurrents: Under = (cells) => ["mA", "µA"].includes(unitOfCells(cells) ?? "");
const areTimes: Under = (cells) => ["s", "min"].includes(unitOfCells(cells) ?? "");
const areTalk: Under = (cells) => areWords(cells) && conceptByValues(cells) === undefined;

/** Titles that mean one thing or another by what stands under them, the first that applies; `is` left out where the column is then none of the concepts. */
const TURNS: readonly {
  readonly told: readonly Concept[];
  readonly under: Under;
  readonly is?: Concept;
}[] = [
  // A tester is a person or an instrument: instruments have numbers.
  { told: ["tester"], under: areMostly(({ text }) => /\d/.test(text)), is: "instrument" },
  { told: ["tester"], under: () => true, is: "by" },
  // "Op." over initials is the operator.
  { told: ["operation"], under: areInitials, is: "by" },
  { told: NAMING, under: areAnswers, is: "result" },
  { told: ["by"], under: areNumbers, is: "required" },
  // "Insulation, 5 kV DC | Measured" has its connections under the first title.
  { told: ["reading"], under: (cells) => areTalk(cells) && arePlaces(cells), is: "position" },
  { told: ["reading"], under: areTalk },
  // What a withstand test draws comes in milliamperes.
  { told: ["current"], under: areSmallCurrents, is: "leakage" },
  { told: ["by"], under: areDays, is: "date" },
  { told: ["time"], under: areTimes, is: "duration" },
  { told: ["panel"], under: areUnits, is: "unit" },
  { told: WORDS, under: areMeasured, is: "reading" },
  // "+ to -: 240 MΩ"
  {
    told: ["position", "part"],
    under: areMostly(({ unit, number }) => unit !== undefined && number !== undefined),
    is: "reading",
  },
  { told: BOUNDS, under: (cells) => areWords(cells) && areAnswers(cells), is: "result" },
  // "Result: 10,400 MΩ" is the reading.
  { told: ["result"], under: areMostly(({ unit }) => unit !== undefined), is: "reading" },
  // "Remarks: OK, OK, OK" and "Trip: yes, yes, yes" are results.
  { told: ["remarks"], under: areAnswers, is: "result" },
  { told: ["reading"], under: (cells) => areWords(cells) && areAnswers(cells), is: "result" },
];

/** What a title means by what stands under it. */
export const byCells = (told: Concept, cells: readonly Cell[]): Concept | undefined => {
  const turn = TURNS.find((one) => one.told.includes(told) && one.under(cells));
  return turn ? turn.is : told;
};
