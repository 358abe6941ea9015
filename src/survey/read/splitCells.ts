import type { FoundTable } from "../find/findTables";
import { areNames, phasesAmong } from "../understand/phases";
import { conceptOf, isWord } from "../words/sheetWords";
import type { Concept } from "../words/words";
import { type Cell, quantityIn, type SheetView } from "./cells";

/** How the cells of one column come apart, and what the parts are called. */
interface Split {
  readonly at: number;
  readonly titles: readonly string[];
  readonly partsOf: (text: string) => readonly string[] | undefined;
}

/** A sheet of which some columns were taken apart, and its table there. */
interface SplitTable {
  readonly view: SheetView;
  readonly table: FoundTable;
}

/** Share of the cells of a column that have to come apart alike. */
const ALIKE = 0.8;

const SLASHED = /\s*[/|;]\s*/;
const DASHED = /\s+[-–—]\s+|\s*[,:]\s+/;

const parted = (mark: RegExp, count: number) => (text: string) => {
  const parts = text.split(mark).map((part) => part.trim());
  return parts.length === count ? parts : undefined;
};

/** "R 42.1 Y 39.9 B 41.3", "A=12, B=13, C=11". */
const LETTERED = /(?<![\p{L}\p{N}])(L[123]|[A-Z])\s?[:=]?\s*(\d+(?:[.,]\d+)?)(?![\p{L}])/gu;

const lettered = (text: string): readonly string[] | undefined => {
  const found = [...text.matchAll(LETTERED)];
  const letters = found.map(([, letter = ""]) => letter);
  return found.length === 3 && phasesAmong(letters).size === 3
    ? found.map(([, , number = ""]) => number)
    : undefined;
};

const isNumber = (part: string) =>
  part === "" || quantityIn(part) !== undefined || isWord(part, "notDone") || /^[-–—?]$/.test(part);

/** The names of three phases that a title or heading has in one: "Reading A / B / C". */
const phasesNamed = (texts: readonly string[]): readonly string[] | undefined => {
  for (const text of texts) {
    const words = text.split(/[^\p{L}\p{N}]+/u);
    for (let at = 0; at + 2 < words.length; at++) {
      const three = words.slice(at, at + 3);
      if (phasesAmong(three).size === 3) return three;
    }
  }
  return undefined;
};

const WAYS = [lettered, parted(SLASHED, 3), parted(/\s+[-–—]\s+|\s*[-–—]\s*/, 3)];

/** Three readings in one cell: "42.1 / 39.9 / 41.3". */
const threeReadings = (
  title: string,
  at: number,
  texts: readonly string[],
  over: readonly string[],
): Split | undefined => {
  const partsOf = WAYS.find((way) => {
    const read = texts.map(way).filter((parts) => parts?.every(isNumber));
    return read.length >= Math.max(2, texts.length * ALIKE);
  });
  if (!partsOf) return undefined;
  const phases = phasesNamed([title, ...over]) ?? ["L1", "L2", "L3"];
  const bare = title.replace(/\(?\S{1,8}\s*[/,|-]\s*\S{1,8}\s*[/,|-]\s*\S{1,8}\)?\s*$/u, "");
  return { at, titles: phases.map((phase) => `${bare} ${phase}`.trim()), partsOf };
};

/** What two parts of a name can be. */
const NAMES: readonly (Concept | undefined)[] = [
  "panel",
  "part",
  "position",
  "name",
  "test",
  "stage",
  "operation",
];

/** Two names in one cell: "H01 / trip circuit" under "Panel / circuit". */
const twoNames = (title: string, at: number, texts: readonly string[]): Split | undefined => {
  for (const mark of [SLASHED, DASHED]) {
    const partsOf = parted(mark, 2);
    const parts = texts.flatMap((text) => [partsOf(text) ?? []].filter(({ length }) => length));
    if (parts.length < Math.max(3, texts.length * ALIKE)) continue;
    const titles = partsOf(title);
    const concepts = titles?.map((one) => conceptOf(one));
    const isTitled =
      concepts?.every((one) => one !== undefined && NAMES.includes(one)) &&
      concepts[0] !== concepts[1];
    if (titles && isTitled) return { at, titles, partsOf };
    const firsts = parts.map(([first = ""]) => first);
    const isNamed = areNames(firsts) && new Set(firsts).size <= firsts.length / 2;
    const told = conceptOf(title);
    if (isNamed && (told === undefined || NAMES.includes(told)))
      return { at, titles: ["Panel", "Point"], partsOf };
  }
  return undefined;
};

const splitsOf = (view: SheetView, { head, bottom, left, right }: FoundTable): Split[] => {
  const over = [head - 1, head - 2, head - 3].flatMap((row) =>
    (view.rows[row] ?? []).map(({ text }) => text),
  );
  return Array.from({ length: right - left + 1 }, (_, index) => left + index).flatMap((at) => {
    const texts: string[] = [];
    for (let row = head + 1; row <= bottom; row++) {
      const cell = view.at(row, at);
      const isApart = cell && cell.day === undefined && /[/|;:=\s–-]/.test(cell.text);
      if (cell && (isApart || texts.length > 0)) texts.push(cell.text);
    }
    const title = view.shown(head, at)?.text ?? "";
    if (texts.length < 2) return [];
    return threeReadings(title, at, texts, over) ?? twoNames(title, at, texts) ?? [];
  });
};

const partOf = (cell: Cell, text: string, isTitle: boolean): Cell | undefined => {
  if (text === "") return undefined;
  const { row, column, address, order } = cell;
  const base = { row, column, address, order, text, value: text };
  return isTitle ? base : { ...base, ...quantityIn(text) };
};

/**
 * A table whose cells hold three readings or two names in one, as a table with a column for each.
 *
 * @returns the table as it is where no column comes apart
 */
export function splitCells(view: SheetView, table: FoundTable): SplitTable {
  const splits = splitsOf(view, table);
  if (splits.length === 0) return { view, table };
  const splitAt = new Map(splits.map((split) => [split.at, split]));
  /** Columns of the new view: that of the sheet, and which part of it. */
  const places: { readonly at: number; readonly part?: number }[] = [];
  for (let at = 0; at < view.columnCount; at++) {
    const split = splitAt.get(at);
    if (split) places.push(...split.titles.map((_, part) => ({ at, part })));
    else places.push({ at });
  }
  const columns = new Map<Cell, number>();
  const made = new Map<string, Cell | undefined>();
  const make = (row: number, column: number, cell: Cell, split: Split, part: number) => {
    const key = `${row} ${column}`;
    if (made.has(key)) return made.get(key);
    const isTitle = row === table.head;
    const parts = isTitle ? split.titles : split.partsOf(cell.text);
    const whole = part === 0 ? cell.text : "";
    const found = partOf(cell, parts?.[part] ?? whole, isTitle);
    if (found) columns.set(found, column);
    made.set(key, found);
    return found;
  };
  const cellIn = (row: number, column: number, cell: Cell | undefined): Cell | undefined => {
    const { at, part } = places[column] ?? { at: -1 };
    const split = splitAt.get(at);
    if (!cell || !split || part === undefined) return cell;
    const isOfTable = row >= table.head && row <= table.bottom;
    if (isOfTable) return make(row, column, cell, split, part);
    return part === 0 ? cell : undefined;
  };
  const at = (row: number, column: number) =>
    cellIn(row, column, view.at(row, places[column]?.at ?? -1));
  const first = new Map<number, number>();
  for (const [column, { at: source }] of places.entries())
    if (!first.has(source)) first.set(source, column);
  const added = places.length - view.columnCount;
  return {
    view: {
      ...view,
      columnCount: places.length,
      at,
      shown: (row, column) => cellIn(row, column, view.shown(row, places[column]?.at ?? -1)),
      rows: view.rows.map((cells, row) =>
        cells.length === 0 ? cells : places.flatMap((_, column) => at(row, column) ?? []),
      ),
      note: (row, column) => view.note(row, places[column]?.at ?? -1),
      address: (row, column) => view.address(row, places[column]?.at ?? -1),
      columnOf: (cell) => columns.get(cell) ?? first.get(view.columnOf(cell)) ?? -1,
    },
    table: { ...table, right: table.right + added },
  };
}
