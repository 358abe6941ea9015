import { type Cell, isValue, type SheetView, windowOf } from "../read/cells";
import { areNames, namesAmong, phasesAmong, positionsAmong } from "../understand/phases";
import { unitIn } from "../understand/unitIn";
import { conceptOf } from "../words/sheetWords";
import type { Concept } from "../words/words";
import type { SurveyColumn } from "./block";
import type { FoundTable } from "./findTables";
import { NAMING } from "./keysAbove";

/** A table of which every line is a quantity of its own, turned so that its lines are columns. */
interface LineTable {
  readonly view: SheetView;
  readonly table: FoundTable;
  /** Titles over the names of the columns, which count for all lines. */
  readonly above: readonly Cell[];
  /** The column of the turned table in which the panels stand, where its titles show it. */
  readonly panelAt?: number;
}

/** Columns that may stand beside the values of such a table. */
const BESIDE: readonly (Concept | undefined)[] = [
  "limit",
  "minimum",
  "maximum",
  "required",
  "remarks",
  "unit",
  undefined,
];

/** Whether a title counts the parts of one line: "Bolt 1", "Bolt 2". */
const isCounted = (title: string): boolean => conceptOf(title) === "part";

/** The names of a line over the titles that is labelled as that of the panels. */
const toldNames = ([label, ...columns]: readonly SurveyColumn[]): ReadonlySet<string> => {
  const depth = label?.lines.slice(0, -1).findIndex((line) => conceptOf(line) === "panel") ?? -1;
  const names = depth < 0 ? [] : columns.flatMap(({ lines }) => lines[depth] ?? []);
  return new Set(names.some((name) => conceptOf(name) !== undefined) ? [] : names);
};

/** The titles of a head line by line, that line first in which the columns are panels. */
const namesOf = (columns: readonly SurveyColumn[]): ReadonlySet<string> => {
  const told = toldNames(columns);
  if (told.size >= 2) return told;
  const deepest = Math.max(...columns.map(({ lines }) => lines.length));
  const found = Array.from({ length: deepest }, (_, depth) =>
    namesAmong(
      columns.flatMap(({ lines }) => lines[depth] ?? []).filter((line) => !isCounted(line)),
    ),
  );
  return found.reduce((most, names) => (names.size > most.size ? names : most), new Set<string>());
};

/** Whether the panels across have several quantities each, in units of their own: the lines are points then. */
const areSeveral = (columns: readonly SurveyColumn[]): boolean =>
  new Set(columns.flatMap(({ panel, unit }) => (panel !== undefined && unit ? [unit] : []))).size >=
  2;

const LIMITS: readonly Concept[] = ["limit", "minimum", "maximum", "required"];

/** What lines below the titles name that are no panels: two of them, and the panels stand across. */
const LINES: readonly (Concept | undefined)[] = [
  "date",
  "by",
  "tester",
  "result",
  "instrument",
  "minimum",
  "maximum",
  "limit",
  "air",
  "temperature",
  "humidity",
];

/** Columns that are called by what the panels are for, as the labels of the lines show: "Incomer | Tie | Metering" over readings, date and result. */
const dutiesOf = (
  view: SheetView,
  { head, bottom, left }: FoundTable,
  columns: readonly SurveyColumn[],
): ReadonlySet<number> => {
  const texts = Array.from(
    { length: bottom - head },
    (_, index) => (view.at(head + 1 + index, left) ?? view.at(head + 1 + index, left - 1))?.text,
  );
  const aside = texts.filter((text) => text !== undefined && LINES.includes(conceptOf(text)));
  if (aside.length < 2) return new Set();
  const own = view.at(head + 1, left);
  const isLabel = own !== undefined && isWords(own);
  const found = columns.filter(
    ({ at, title }) =>
      title !== "" &&
      (at !== left || !isLabel) &&
      unitIn(title) === undefined &&
      [undefined, "name", "panel"].includes(conceptOf(title)),
  );
  return new Set(found.map(({ at }) => at));
};

/** Whether lines of a table are of who tested its columns, and when. */
const tellsWho = (view: SheetView, { head, bottom, left }: FoundTable): boolean =>
  Array.from({ length: bottom - head }, (_, index) => view.at(head + 1 + index, left)).some(
    (cell) => cell !== undefined && WHO.includes(conceptOf(cell.text)),
  );
const WHO: readonly (Concept | undefined)[] = ["date", "by", "tester", "instrument"];

interface Parts {
  readonly labels: readonly number[];
  readonly values: readonly number[];
  readonly others: readonly number[];
  /** Whether the columns are panels called by what they are for. */
  readonly isOfDuties: boolean;
}

/** The columns of labels, of values and of what counts for all values; undefined for a table with titles of quantities. */
const partsOf = (
  view: SheetView,
  table: FoundTable,
  columns: readonly SurveyColumn[],
): Parts | undefined => {
  const names = namesOf(columns);
  const isPhase = ({ position, unit }: SurveyColumn) =>
    position !== undefined && unit === undefined;
  const isNamed = (column: SurveyColumn) =>
    column.lines.some((line) => names.has(line)) || isPhase(column);
  const told = dutiesOf(view, table, columns);
  const duties = told.size > columns.filter(isNamed).length ? told : new Set<number>();
  const isValueColumn = (column: SurveyColumn) => isNamed(column) || duties.has(column.at);
  const values = columns.filter(isValueColumn).map(({ at }) => at);
  const first = values[0] ?? 0;
  const left = columns.filter(({ at }) => at < first);
  // Over a day and a name for each panel, answers across have one column at their end that sums them up: "Overall: complete".
  const areAnswers =
    tellsWho(view, table) &&
    columns.every((column) => !isValueColumn(column) || column.concept === "result");
  const isOfAll = ({ at, concept, title }: SurveyColumn) =>
    areAnswers && at === table.right && concept === "result" && conceptOf(title) === "result";
  const isLimit = ({ concept }: SurveyColumn) => concept !== undefined && LIMITS.includes(concept);
  const own = left.filter((column) => !isLimit(column)).map(({ at }) => at);
  const labels = own.length > 0 ? own : labelsLeftOf(view, table);
  const others = [
    ...left.filter(isLimit),
    ...columns.filter((column) => column.at > first && !isValueColumn(column) && !isOfAll(column)),
  ];
  if (
    values.length < 2 ||
    labels.length === 0 ||
    (areSeveral(columns) && !areFields(view, table, labels)) ||
    labels.some((at) => isOfPanels(view, table, at)) ||
    !others.every(({ concept }) => BESIDE.includes(concept))
  )
    return undefined;
  return names.size >= 2 || duties.size >= 2 || tellsQuantities(view, table, labels)
    ? { labels, values, others: others.map(({ at }) => at), isOfDuties: duties.size >= 2 }
    : undefined;
};

/** What lines tell of a record, and points of a curve do not. */
const FIELDS: readonly (Concept | undefined)[] = [
  "required",
  "error",
  "result",
  "date",
  "by",
  "tester",
  "instrument",
  "remarks",
];

/** Whether the lines are what a record has, each a field: several of them name such. */
const areFields = (
  view: SheetView,
  { head, bottom }: FoundTable,
  labels: readonly number[],
): boolean => {
  const told = Array.from({ length: bottom - head }, (_, index) =>
    labels.map((at) => view.at(head + 1 + index, at)),
  ).flatMap((cells) => cells.flatMap((cell) => (cell ? conceptOf(cell.text) : undefined)));
  return new Set(told.filter((concept) => FIELDS.includes(concept))).size >= 3;
};

/** Whether a column of labels names panels, by its title and its words: its lines are no quantities. */
const isOfPanels = (view: SheetView, { top, head, bottom }: FoundTable, at: number): boolean => {
  const shown = (row: number) => view.shown(row, at);
  const titles = Array.from({ length: head - top + 1 }, (_, index) => shown(top + index));
  const texts = Array.from({ length: bottom - head }, (_, index) =>
    view.at(head + 1 + index, at),
  ).flatMap((cell) => (cell && cell.number === undefined ? [cell.text] : []));
  const isPlace = positionsAmong(texts);
  return (
    titles.some((cell) => cell && conceptOf(cell.text) === "panel") &&
    areNames(texts) &&
    texts.every((text) => isPlace(text) === undefined)
  );
};

/** A table without labels shares those of the table at its left. */
const labelsLeftOf = (view: SheetView, { head, bottom, left }: FoundTable): number[] => {
  for (let at = left - 1; at >= 0; at--) {
    const cells = Array.from({ length: bottom - head }, (_, index) =>
      view.shown(head + 1 + index, at),
    );
    const words = cells.filter((cell) => cell !== undefined && isWords(cell)).length;
    if (words >= cells.length * 0.7) return [at];
  }
  return [];
};

/** Whether the labels of most lines carry a unit or name a quantity. */
const tellsQuantities = (
  view: SheetView,
  { head, bottom }: FoundTable,
  labels: readonly number[],
): boolean => {
  let lines = 0;
  let told = 0;
  for (let row = head + 1; row <= bottom; row++) {
    const texts = labels.flatMap((at) => view.shown(row, at)?.text ?? []);
    if (texts.length === 0) continue;
    lines += 1;
    if (texts.some((text) => unitIn(text) !== undefined || conceptOf(text) !== undefined))
      told += 1;
  }
  return told > 0 && told >= lines * 0.6;
};

/** Whether a line holds labels among its values: "Charge motor, s | 8.6 | Accept? | YES". */
const hasLabels = (view: SheetView, row: number, values: readonly number[]): boolean =>
  values.some((at) => {
    const cell = view.at(row, at);
    return cell !== undefined && isWords(cell) && conceptOf(cell.text) !== undefined;
  });

const isWords = (cell: Cell) => typeof cell.value === "string" && !isValue(cell);

interface Group {
  readonly lines: number[];
  /** The heading over its lines. */
  readonly above: readonly Cell[];
}

/** The lines of a table in groups: by the first of several labels, or as headings between the lines part them. */
const groupsOf = (
  view: SheetView,
  { head, bottom }: FoundTable,
  { labels, values }: Parts,
): Group[] => {
  const groups: Group[] = [];
  const [at = 0] = labels;
  const isGrouped = labels.length > 1 && leavesOut(view, { head, bottom }, at, values);
  let group: Group | undefined;
  let heading: Cell | undefined;
  let banner: readonly Cell[] = [];
  for (let row = head + 1; row <= bottom; row++) {
    if (!values.some((value) => view.shown(row, value))) {
      const words = labels.flatMap((label) => view.at(row, label) ?? []);
      if (words.length > 0) [group, banner] = [undefined, words];
      continue;
    }
    if (hasLabels(view, row, values)) continue;
    const first = isGrouped ? view.shown(row, at) : undefined;
    const isNew = first !== heading && isStart(view, row, labels);
    if (group === undefined || isNew) {
      group = { lines: [], above: banner };
      groups.push(group);
      heading = first;
    }
    group.lines.push(row);
  }
  return groups;
};

/** Whether lines of values have nothing of their own in a column. */
const leavesOut = (
  view: SheetView,
  { head, bottom }: Pick<FoundTable, "head" | "bottom">,
  column: number,
  values: readonly number[],
): boolean => {
  const lines = Array.from({ length: bottom - head }, (_, index) => head + 1 + index).filter(
    (row) => values.some((at) => view.shown(row, at)),
  );
  const own = lines.filter((row) => view.at(row, column) !== undefined).length;
  return own < lines.length * 0.9;
};

/** Whether a line begins a group: its first label stands there, and the lines below it have none of their own. */
const isStart = (view: SheetView, row: number, labels: readonly number[]): boolean => {
  const first = labels[0] ?? 0;
  if (view.shown(row, first) === undefined) return false;
  const below = view.at(row + 1, first);
  return below === undefined || view.shown(row + 1, first) === view.shown(row, first);
};

/** Lines of a head that tell the columns apart: the panels, and the phases of each. */
const namingRows = (
  view: SheetView,
  heads: readonly number[],
  { labels, values }: Parts,
  names: ReadonlySet<string>,
): number[] =>
  heads.filter((row) => {
    const texts = values.flatMap((at) => view.shown(row, at)?.text ?? []);
    const label = labels.map((at) => view.shown(row, at)).find((cell) => cell !== undefined);
    const isNamed = label !== undefined && NAMING.includes(conceptOf(label.text));
    return (
      texts.some((text) => names.has(text)) ||
      phasesAmong(texts).size >= 2 ||
      (isNamed && heads.length > 1)
    );
  });

/** Tables whose lines are quantities, each group of lines a table with the quantities as titles. */
export function lineTables(
  view: SheetView,
  table: FoundTable,
  columns: readonly SurveyColumn[],
): LineTable[] | undefined {
  const parts = partsOf(view, table, columns);
  if (!parts) return undefined;
  const { labels, values, others, isOfDuties } = parts;
  const names = namesOf(columns);
  const heads = Array.from({ length: table.head - table.top + 1 }, (_, index) => table.top + index);
  const naming = namingRows(view, heads, parts, names);
  const nameRows = naming.length > 0 ? naming : [table.head];
  const above = heads.flatMap((row) =>
    nameRows.includes(row) ? [] : (view.shown(row, values[0] ?? 0) ?? []),
  );
  return groupsOf(view, table, parts).map(({ lines, above: heading }): LineTable => {
    const rows = [...labels, ...values, ...others];
    return {
      view: windowOf(view, rows, [...nameRows, ...lines]),
      above: [...heading, ...above],
      ...(isOfDuties ? { panelAt: 0 } : {}),
      table: {
        top: 0,
        head: labels.length - 1,
        bottom: rows.length - 1,
        left: 0,
        right: lines.length + nameRows.length - 1,
      },
    };
  });
}
