import type { Draft, Line, Measure } from "../draft";
import { type Cell, isValue } from "../read/cells";
import { dayOf } from "../understand/dayOf";
import { unitIn } from "../understand/unitIn";
import { conceptOf, isWord, kindsIn } from "../words/sheetWords";
import type { Concept } from "../words/words";
import type { Facts, SurveyColumn } from "./block";
import { factsIn, NO_FACTS } from "./findFacts";
import { isSummary } from "./nameColumns";

/** Labels of lines that hold no readings but what counts for those above and below. */
export const LIMIT_LINES: readonly Concept[] = ["minimum", "maximum", "limit", "required"];
const ASIDE_LINES: readonly Concept[] = [
  ...LIMIT_LINES,
  "temperature",
  "air",
  "humidity",
  "date",
  "by",
  "instrument",
  "result",
  "spread",
  "change",
  "remarks",
  "corrected",
  "factor",
  "due",
];

const cellsOf = ({ view, table: { left, right } }: Draft, row: number): Cell[] =>
  Array.from({ length: right - left + 1 }, (_, index) => view.at(row, left + index)).flatMap(
    (cell) => cell ?? [],
  );

/** Whether a line states limits or conditions for the others: its label says so. */
const isAsideLine = (cells: readonly Cell[], label: Cell | undefined): boolean => {
  const named = label && conceptOf(label.text);
  if (named !== undefined && ASIDE_LINES.includes(named)) return true;
  const first =
    cells[0] && typeof cells[0].value === "string" ? conceptOf(cells[0].text) : undefined;
  return first !== undefined && (LIMIT_LINES.includes(first) || first === "remarks");
};

/** Words at the beginning of a line that is about the columns: who measured them, when, and what came of it. */
const OF_COLUMNS: readonly (Concept | undefined)[] = [
  "date",
  "by",
  "tester",
  "result",
  "instrument",
];

/** The few lines of a table that begin with such a word; none where many do, since that is what its first column holds. */
const namedLines = (draft: Draft): ReadonlySet<number> => {
  const { view, table } = draft;
  const rows = Array.from(
    { length: table.bottom - table.head },
    (_, index) => table.head + 1 + index,
  );
  const named = rows.filter((row) => {
    const cell = view.at(row, table.left);
    return (
      cell !== undefined &&
      typeof cell.value === "string" &&
      !isValue(cell) &&
      OF_COLUMNS.includes(conceptOf(cell.text))
    );
  });
  return new Set(named.length <= rows.length * 0.4 ? named : []);
};

/** What a line with one cell tells of those below it. */
interface Banner {
  readonly text: string | undefined;
  readonly facts: Facts;
}

/** What the only cell of a line tells of those below it: words, or a day, under which the words before it still count. */
const bannerOf = (cell: Cell, before: Banner | undefined): Banner | undefined => {
  const day = dayOf(cell);
  if (day !== undefined)
    return {
      text: before?.text,
      facts: { ...(before?.facts ?? NO_FACTS), day, dayAddress: cell.address },
    };
  return !isValue(cell) && typeof cell.value === "string"
    ? { text: cell.text, facts: factsIn(cell) }
    : undefined;
};

/** The lines of a table that hold records, with what banners between them say. */
export function linesOf(draft: Draft): { lines: Line[]; aside: Line[] } {
  const { view, table } = draft;
  const lines: Line[] = [];
  const aside: Line[] = [];
  let banner: Banner | undefined;
  const label = labelOf(draft);
  const named = namedLines(draft);
  for (let row = table.head + 1; row <= table.bottom; row++) {
    const cells = cellsOf(draft, row);
    const [first] = cells;
    if (!first) continue;
    const told = cells.length === 1 ? bannerOf(first, banner) : undefined;
    banner = told ?? banner;
    const line = { row, cells, facts: banner?.facts ?? NO_FACTS, banner: banner?.text };
    if (isAsideLine(cells, label && view.at(row, label.at)) || named.has(row)) aside.push(line);
    else if (told === undefined && !isSummary(cells)) lines.push(line);
  }
  // A line with a fraction of the cells of the others is a note or a count at the foot of the table.
  const filled = lines.map(({ cells }) => cells.length).sort((one, other) => one - other);
  const usual = filled[Math.floor(filled.length / 2)] ?? 0;
  const isLine = ({ cells }: Line) =>
    (cells.length >= Math.min(3, usual) || isAnswered(draft, cells)) && cells.length > usual * 0.3;
  return { lines: lines.filter(isLine), aside };
}

/** Whether a line with a blank or two is one of records all the same: its result stands there. */
const isAnswered = ({ view, columns }: Draft, cells: readonly Cell[]): boolean =>
  cells.length > 1 &&
  cells.some(
    (cell) =>
      isValue(cell) &&
      columns.some(({ at, concept }) => concept === "result" && at === view.columnOf(cell)),
  );

/** A column of labels: without a title, or with units in most of its words. */
export const labelOf = ({ view, columns, table }: Draft): SurveyColumn | undefined =>
  columns.find(({ title, at, numbers, concept }) => {
    if (at === table.left && columns.some(({ panel }) => panel !== undefined)) return true;
    if (at !== table.left || concept === "panel" || (title !== "" && numbers)) return false;
    const words = Array.from({ length: table.bottom - table.head }, (_, index) =>
      view.at(table.head + 1 + index, at),
    );
    const told = words.filter(
      (cell) =>
        cell !== undefined &&
        cell.number === undefined &&
        !/^\p{Lu}\p{Ll}{2,}$/u.test(cell.text) &&
        unitIn(cell.text) !== undefined,
    );
    return title === "" || (told.length > 0 && told.length >= words.length * 0.5);
  });

/** Whether a line has a reading or a place for one: dates and verdicts under all of several readings are about the columns. */
export const holdsReadings = (
  { view, columns }: Draft,
  measures: readonly Measure[],
  row: number,
): boolean => {
  const test = columns.find(({ concept }) => concept === "test");
  const named = test && view.at(row, test.at);
  if (named && kindsIn(named.text).length > 0) return true;
  const asked = measures.filter(({ column: { concept } }) => concept !== "result");
  const cells = asked.flatMap(({ column: { at } }) => view.at(row, at) ?? []);
  return (
    asked.length < 3 ||
    cells.length < asked.length * 0.7 ||
    cells.some((cell) => (cell.number !== undefined && cell.day === undefined) || isGap(cell))
  );
};

/** Whether a cell stands for a reading that is not there. */
const isGap = ({ text }: Cell): boolean =>
  isWord(text, "notDone") || isWord(text, "notApplicable") || /^[-–—?.…/]+$/.test(text);
