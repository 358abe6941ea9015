import { unitSize } from "../../quantities/units";
import { type Cell, isValue, type SheetView } from "../read/cells";
import { areNames, namesAmong, phasesAmong, positionsAmong } from "../understand/phases";
import { isPointOfTime, POINT_OF_CURVE } from "../understand/pointOfTime";
import { isUnitText, unitIn } from "../understand/unitIn";
import { conceptOf } from "../words/sheetWords";
import type { Concept } from "../words/words";
import { quantitiesIn } from "./findFacts";
import { withKeysAbove } from "./keysAbove";

/** A head and the lines under it, in the rows and columns of the view. */
export interface FoundTable {
  readonly top: number;
  /** Last row of the head. */
  readonly head: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

interface Segment {
  readonly row: number;
  readonly left: number;
  readonly right: number;
  readonly cells: readonly Cell[];
}

const column = (view: SheetView, cell: Cell) => view.columnOf(cell);

/** Blank lines after which a table is over. */
const MAX_BLANK = 2;

/** The filled stretches of a row, parted by cells that show nothing. */
const segmentsOf = (view: SheetView, row: number): Segment[] => {
  const segments: { row: number; left: number; right: number; cells: Cell[] }[] = [];
  for (let at = 0; at < view.columnCount; at++) {
    const cell = view.shown(row, at);
    if (!cell) continue;
    const last = segments.at(-1);
    const own = view.at(row, at);
    if (last && last.right === at - 1) {
      last.right = at;
      if (own) last.cells.push(own);
    } else segments.push({ row, left: at, right: at, cells: own ? [own] : [] });
  }
  return segments;
};

/** Whether a title names something that tables have columns for. */
const isTitle = (cell: Cell): boolean =>
  cell.unit === "s" ||
  cell.unit === "min" ||
  isPointOfTime([cell.text]) ||
  (cell.text.length <= 80 &&
    !/:$/.test(cell.text) &&
    (conceptOf(cell.text) !== undefined || unitIn(cell.text) !== undefined));

const isUnitAlone = ({ text }: Cell) => isUnitText(text);

/** Whether a cell holds a number or a day; a time such as "30 s" may be the title of what was read then. */
const isFigure = ({ number, unit, day, value }: Cell): boolean =>
  (number !== undefined && unit !== "s" && unit !== "min") ||
  day !== undefined ||
  typeof value === "boolean";

/** Whether words tell a quantity besides, other than a time or a temperature that a reading belongs to. */
const isFact = (text: string): boolean => {
  const [first] = quantitiesIn(text);
  return (
    first !== undefined &&
    first.at > 0 &&
    !["time", "temperature"].includes(unitSize(first.unit).quantity)
  );
};

/** Texts of a row that name a phase or a combination; 12, 23 and 31 do so together only, and are readings else. */
const combinationsAmong = (texts: readonly string[]): string[] => {
  const position = positionsAmong(texts);
  const digits = new Set(texts.filter((text) => /^\d{2,}$/.test(text)));
  const areNamed = digits.size >= 3 && [...digits].every((text) => position(text) !== undefined);
  return texts.filter((text) => (areNamed || !digits.has(text)) && position(text) !== undefined);
};

/** Whether a cell holds a number that names no phase, no pole and no panel: one with decimals, or of three digits. */
const isMeasured = ({ value, formula }: Cell): boolean =>
  typeof value === "number" && formula === undefined && (!Number.isInteger(value) || value > 99);

/** Points of a curve as titles: three quantities of one unit and more, rising, over numbers that carry none. */
const pointsAmong = (view: SheetView, { row, cells }: Segment): ReadonlySet<string> => {
  const points = cells.filter(
    ({ value, text }) => typeof value === "string" && POINT_OF_CURVE.test(text),
  );
  const isRising = points.every(
    ({ number = 0, unit }, index) =>
      unit === points[0]?.unit && (index === 0 || number > (points[index - 1]?.number ?? 0)),
  );
  const areBelow = points.every((cell) => {
    const below = view.at(row + 1, column(view, cell));
    return below?.number !== undefined && below.unit === undefined;
  });
  return points.length >= 3 && isRising && areBelow
    ? new Set(points.map(({ text }) => text))
    : new Set();
};

/** What a line at the foot of a table may name for each of its columns. */
const NAMED_BELOW: readonly (Concept | undefined)[] = ["by", "tester", "instrument", "remarks"];

/** Whether most cells say the same: a line of values, "passed, passed, passed". */
const saySame = (cells: readonly Cell[]): boolean => {
  const words = cells.filter((cell) => !isUnitAlone(cell)).map(({ text }) => text);
  const most = Math.max(0, ...words.map((text) => words.filter((other) => other === text).length));
  return words.length >= 3 && most >= words.length * 0.6;
};

/** The names of a series that most titles of a line are. */
const namesAcross = (texts: readonly string[]): ReadonlySet<string> =>
  areNames(texts.slice(1)) || areNames(texts) ? namesAmong(texts) : new Set<string>();

/** Whether a line tells the unit of each column where the quantities do not: "Unit | A | s | s". */
const isUnits = ([first, ...rest]: readonly Cell[]): boolean =>
  first !== undefined && OF_UNITS.includes(conceptOf(first.text)) && rest.every(isUnitAlone);

/** What "Unit" is about: a panel, or what it is over units. */
const OF_UNITS: readonly (Concept | undefined)[] = ["unit", "panel"];

const isKnown = (text: string): boolean => conceptOf(text) !== undefined;

/** Whether a line tells by whom or with what each column was measured: "Insulation tester | IT-4 | IT-4 | IT-2". */
const isOfColumns = (texts: readonly string[]): boolean =>
  NAMED_BELOW.includes(conceptOf(texts[0] ?? ""));

/** Whether a stretch of a row can be the titles of a table. */
const isHead = (view: SheetView, segment: Segment): boolean => {
  const { cells } = segment;
  if (cells.length < 2 || cells.some(isMeasured)) return false;
  const texts = cells.map(({ text }) => text);
  // "U [V]" beside "I [mA]" are quantities, and no phases.
  const bare = texts.filter((text) => !/[[(]/.test(text));
  const points = pointsAmong(view, segment);
  const phases = new Set([...phasesAmong(texts), ...combinationsAmong(bare), ...points]);
  const isName = namesAcross(texts);
  if (isOfColumns(texts) && (isName.size > 0 || !texts.slice(1).some(isKnown))) return false;
  const rest = cells.filter(({ text }) => !phases.has(text) && !isName.has(text));
  if (rest.some(isFigure)) return false;
  // "Limit 10 mΩ" beside "Test current 10 A" are facts over the titles.
  const facts = rest.filter(({ text }) => isFact(text)).length;
  if (facts > 0 && facts >= cells.length - 1) return false;
  // "C-E, Pass" after a blank cell is the end of a line of values.
  if (rest.length > 0 && rest.every(isValue) && phases.size < 3) return false;
  if (saySame(rest)) return false;
  const titles = rest.filter((cell) => isTitle(cell) || isUnitAlone(cell)).length;
  const answers = rest.filter(
    (cell) => isValue(cell) && !isTitle(cell) && !isUnitAlone(cell),
  ).length;
  if (answers > cells.length / 3) return false;
  if (rest.length === 0) return isName.size >= 2 || phases.size >= 3;
  return titles + cells.length - rest.length >= Math.max(2, cells.length * 0.5);
};

/** Whether values stand under a stretch within the next lines. */
const hasBody = (view: SheetView, { row, left, right }: Segment): boolean => {
  let looked = 0;
  for (let below = row + 1; below < view.rowCount && looked < 4; below++) {
    const cells =
      view.rows[below]?.filter(
        (cell) => column(view, cell) >= left && column(view, cell) <= right,
      ) ?? [];
    if (cells.length === 0) continue;
    looked += 1;
    if (cells.length >= 2 && cells.some(isValue)) return true;
  }
  return false;
};

/** Whether the lines under a stretch have labels at its left that name connections, units or what a table has columns for. */
const haveLabels = (view: SheetView, { row, left }: Segment): boolean => {
  const labels = [1, 2, 3, 4, 5].flatMap((step) => view.at(row + step, left - 1) ?? []);
  const texts = labels.map(({ text }) => text);
  const isPlace = positionsAmong(texts);
  const told = labels.filter(
    (cell) => isPlace(cell.text) !== undefined || (!isValue(cell) && isTitle(cell)),
  );
  return told.length >= 3 && told.length >= labels.length * 0.6;
};

/** Lines under a title that show what its column holds. */
const SHOWN = 3;

/**
 * Whether the lines under a stretch of words show that it is a line of titles: all of them fill its columns,
 * and the same columns hold numbers or answers in each. One of the words has to be a known title.
 */
const hasBodyOfColumns = (view: SheetView, segment: Segment): boolean => {
  const { row, cells } = segment;
  const texts = cells.map(({ text }) => text);
  const areWords = cells.every(
    (cell) =>
      typeof cell.value === "string" &&
      cell.text.length <= 40 &&
      !/:$/.test(cell.text) &&
      (cell.number === undefined || isUnitAlone(cell)) &&
      cell.day === undefined,
  );
  if (cells.length < 3 || !areWords || new Set(texts).size < texts.length) return false;
  if (!cells.some(isTitle) && !haveLabels(view, segment)) return false;
  if (cells.filter(isValue).length > cells.length / 2) return false;
  const lines = [1, 2, 3].map((step) =>
    cells.map((cell) => view.at(row + step, column(view, cell))),
  );
  const filled = lines.filter((line) => line.some((cell) => cell !== undefined));
  if (filled.length < Math.min(SHOWN, view.rowCount - row - 1) || filled.length < 2) return false;
  if (filled.some((line) => line.filter((cell) => cell !== undefined).length < cells.length * 0.7))
    return false;
  const held = cells.filter((_, index) =>
    filled.every((line) => line[index] !== undefined && isValue(line[index])),
  );
  return held.length >= 2 && held.length >= cells.length * 0.4;
};

/** Whether a word of a stretch stands in another line under the same title: a line of values, cut by a blank cell. */
const saysAgain = (view: SheetView, { cells }: Segment, row: number): boolean => {
  const again = cells.filter((cell) => view.at(row, column(view, cell))?.text === cell.text);
  // "C, C, C" in line after line are answers, and no units.
  return (
    again.some(({ text }) => /\p{L}{2}/u.test(text)) ||
    again.length >= Math.max(2, cells.length / 2)
  );
};

const overlaps = (one: { left: number; right: number }, other: { left: number; right: number }) =>
  one.left <= other.right && other.left <= one.right;

/** The titles of a table: their first and last line, and the columns that they span. */
interface HeadArea {
  top: number;
  head: number;
  left: number;
  right: number;
}

/** Heads of a sheet: one or more lines of titles above one another. */
const headsOf = (view: SheetView): HeadArea[] => {
  const heads: HeadArea[] = [];
  for (let row = 0; row < view.rowCount; row++)
    for (const segment of segmentsOf(view, row))
      if (
        !isUnits(segment.cells) &&
        ((isHead(view, segment) && hasBody(view, segment)) || hasBodyOfColumns(view, segment))
      )
        addHead(heads, view, segment);
  return united(heads).map((head) => withKeysAbove(view, withLineAbove(view, head)));
};

/** Heads of several lines that touch are one: a group's title that is not joined over its columns leaves blank cells in their first line. */
const united = (heads: readonly HeadArea[]): readonly HeadArea[] => {
  const whole: HeadArea[] = [];
  for (const head of heads) {
    const beside = whole.find(
      (one) =>
        one.right === head.left - 1 &&
        one.top === head.top &&
        Math.max(one.head, head.head) > head.top,
    );
    if (beside === undefined) whole.push({ ...head });
    else {
      beside.right = head.right;
      beside.head = Math.max(beside.head, head.head);
    }
  }
  return whole;
};

/** Adds a line of titles to the heads: to the one right above it, or as one of its own. */
const addHead = (heads: HeadArea[], view: SheetView, segment: Segment): void => {
  const { row, left, right } = segment;
  // A stretch of the same line may have gone to that head before: "R, Y, B" under closing, and again under opening.
  const above = heads.findLast(
    (head) =>
      (head.head === row - 1 || (head.head === row && head.top < row)) && overlaps(head, segment),
  );
  if (saysAgain(view, segment, above ? row + 1 : row - 1)) return;
  if (above === undefined) {
    // Initials such as "PA" again and again are no units of anything.
    const [first, ...rest] = segment.cells;
    if (first && isUnitAlone(first) && rest.every(({ text }) => text === first.text)) return;
    heads.push({ top: row, head: row, left, right });
    return;
  }
  above.head = row;
  above.left = Math.min(above.left, left);
  above.right = Math.max(above.right, right);
};

/** A line of group titles right above the titles belongs to the head: two of them, or one that is joined over several columns. */
const withLineAbove = <H extends { top: number; head: number; left: number; right: number }>(
  view: SheetView,
  head: H,
): H => {
  const row = head.top - 1;
  const above = (view.rows[row] ?? []).filter(
    (cell) => column(view, cell) >= head.left && column(view, cell) <= head.right,
  );
  const groups = above.filter((cell) => !isValue(cell) && cell.text.length <= 40);
  const titles = (view.rows[head.top] ?? []).map(({ text }) => text);
  const isRepeated = new Set(titles).size < titles.length || titles.length < above.length * 2;
  const spans = groups.filter((cell) => {
    const at = column(view, cell);
    return (
      at > head.left &&
      ((groups.length > 1 && isRepeated && quantitiesIn(cell.text).length === 0) ||
        view.shown(row, at + 1) === cell)
    );
  });
  if (above.length === 0 || groups.length < above.length || spans.length === 0) return head;
  // The line above may go on beyond the last line of titles, which has units for some columns only.
  const whole = segmentsOf(view, row).find((segment) => overlaps(segment, head));
  const isWhole = whole?.cells.every((cell) => !isValue(cell) && cell.text.length <= 40);
  return whole && isWhole
    ? {
        ...head,
        top: row,
        left: Math.min(head.left, whole.left),
        right: Math.max(head.right, whole.right),
      }
    : { ...head, top: row };
};

/** Whether a line is one of a form: several labels, each with a value or two. */
const isForm = (cells: readonly Cell[]): boolean => {
  const labels = cells.filter(
    (cell) =>
      typeof cell.value === "string" &&
      !isValue(cell) &&
      !isUnitAlone(cell) &&
      conceptOf(cell.text) !== undefined,
  ).length;
  return labels >= 2 && cells.length <= labels * 3;
};

/** Whether a line names who did it, or with what, for each of the columns: "Operator | Aubry | Aubry". */
const isNamesLine = (cells: readonly Cell[]): boolean =>
  cells.length >= 3 && NAMED_BELOW.includes(conceptOf(cells[0]?.text ?? ""));

/** Whether a line belongs to the table above it, after so many blank lines. */
const isOfTable = (cells: readonly Cell[], blank: number): boolean =>
  cells.length >= 2 && (cells.some(isValue) || (blank === 0 && isNamesLine(cells)));

/** Lines between a heading and the titles of its table, labels of a form among them. */
const NEAR = 6;

/** The last line under a head that holds values. */
const bottomOf = (
  view: SheetView,
  head: { head: number; left: number; right: number },
  heads: readonly { top: number; left: number; right: number }[],
): number => {
  const next = Math.min(
    ...heads
      .filter((other) => other.top > head.head && overlaps(other, head))
      .map(({ top }) => top),
    view.rowCount,
  );
  let last = head.head;
  let blank = 0;
  for (let row = head.head + 1; row < next && blank <= MAX_BLANK; row++) {
    const cells = (view.rows[row] ?? []).filter((cell) => {
      const at = column(view, cell);
      return at >= head.left && at <= head.right;
    });
    // A heading after a blank line, close over the next titles, is that of the next table.
    const isNext = cells.length <= 1 && blank > 0 && next < view.rowCount && next - row <= NEAR;
    if (isNext && cells.length === 1) break;
    if (blank > 0 && isForm(cells)) break;
    if (cells.length === 0) blank += 1;
    else if (isOfTable(cells, blank)) {
      blank = 0;
      last = row;
    }
  }
  return last;
};

/** Columns of labels without a title at the left of a table belong to it: one for most lines, or one more for those that the nearer one leaves out. */
const leftOf = (view: SheetView, { top, bottom, left }: FoundTable): number => {
  for (let at = left; at > 0; at--) {
    const lines = Array.from({ length: bottom - top + 1 }, (_, index) => top + index).filter(
      (row) => view.at(row, left),
    );
    const isLabelled = (row: number) => typeof view.at(row, at - 1)?.value === "string";
    const labels = lines.filter(isLabelled).length;
    const bare = lines.filter((row) => at < left && !view.at(row, at));
    const isNeeded = bare.length > 0 && bare.every(isLabelled);
    if (labels === 0 || (labels < lines.length / 2 - 1 && !isNeeded)) return at;
  }
  return 0;
};

/** Words behind a table, in a column without a title right beside it, belong to its lines. */
const rightOf = (
  view: SheetView,
  { top, head, bottom, left, right }: FoundTable,
  heads: readonly HeadArea[],
): number => {
  const beside = right + 1;
  const isTaken = heads.some(
    (other) =>
      other.top <= bottom && other.head >= top && other.left <= beside && other.right >= beside,
  );
  const titled = Array.from({ length: head - top + 1 }, (_, index) =>
    view.shown(top + index, beside),
  );
  const lines = Array.from({ length: bottom - head }, (_, index) => head + 1 + index);
  const words = lines.flatMap((row) => {
    const cell = view.at(row, beside);
    return cell &&
      Array.from({ length: right - left + 1 }, (_, at) => view.at(row, left + at)).some(Boolean)
      ? [cell]
      : [];
  });
  const areWords = words.every((cell) => typeof cell.value === "string" && !isValue(cell));
  return !isTaken && titled.every((cell) => cell === undefined) && words.length > 0 && areWords
    ? beside
    : right;
};

/** A cell of a row of which somebody has said that it holds titles. */
interface Said {
  readonly row: number;
  readonly column: number;
}

/** Lines under a head that was said in which no other begins. */
const NO_OTHER = 3;

/** The heads of a sheet with one that somebody has pointed at, in the place of the one that was taken for it. */
const withHead = (view: SheetView, heads: readonly HeadArea[], said: Said): HeadArea[] => {
  const segment = segmentsOf(view, said.row).find(
    ({ left, right }) => said.column >= left && said.column <= right,
  );
  if (segment === undefined) return [...heads];
  const { row, left, right } = segment;
  const beside = heads.filter((head) => overlaps(head, segment));
  const known = beside.find(({ top, head }) => row >= top && row <= head);
  const above = beside.findLast(
    (head) => head.head < row && bottomOf(view, head, heads) >= row - 1 - MAX_BLANK,
  );
  const isWrong = (head: HeadArea) =>
    head === known ||
    head === above ||
    (beside.includes(head) && head.top > row && head.top <= row + NO_OTHER);
  const top = known?.top ?? row;
  return [...heads.filter((head) => !isWrong(head)), { top, head: row, left, right }].sort(
    (one, other) => one.top - other.top,
  );
};

/** The tables of a sheet: titles in a row, and lines of values under them. */
export function findTables(view: SheetView, said: readonly Said[] = []): FoundTable[] {
  const heads = said.reduce((found, one) => withHead(view, found, one), headsOf(view));
  return heads
    .map((head): FoundTable => ({ ...head, bottom: bottomOf(view, head, heads) }))
    .filter(({ head, bottom }) => bottom > head)
    .map((table) => ({ ...table, left: leftOf(view, table), right: rightOf(view, table, heads) }))
    .filter(
      (table, index, tables) =>
        !tables.some((other, at) => at !== index && holds(other, table, at < index)),
    );
}

/** Whether a table lies in another one whole; of two that are alike the first counts. */
const holds = (outer: FoundTable, inner: FoundTable, isBefore: boolean): boolean => {
  const isIn =
    inner.top >= outer.top &&
    inner.bottom <= outer.bottom &&
    inner.left >= outer.left &&
    inner.right <= outer.right;
  const isLess = inner.right - inner.left < outer.right - outer.left || inner.top > outer.top;
  return isIn && inner.top <= outer.head && (isLess || isBefore);
};
