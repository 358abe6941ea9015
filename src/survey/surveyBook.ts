import type { Snapshot } from "../sheets/snapshot";
import type { Block, Label, Survey, SurveyColumn, SurveyInstrument } from "./block";
import { type Cell, isValue, type SheetView, turn, viewSheet } from "./cells";
import { dayOf } from "./dayOf";
import { factsIn, factsOfLabels, joinFacts, NO_FACTS } from "./findFacts";
import { type FoundTable, findTables } from "./findTables";
import { nameColumns } from "./nameColumns";
import { readLabels } from "./readLabels";
import { readTable } from "./readTable";

/** Lines over a table in which its heading is looked for. */
const MAX_HEADING = 6;

const inTable =
  (view: SheetView, { top, bottom, left, right }: FoundTable) =>
  (cell: Cell) => {
    const [row, column] = view.turned ? [cell.column, cell.row] : [cell.row, cell.column];
    return row >= top && row <= bottom && column >= left && column <= right;
  };

/** Cells of words over a table, the nearest first, and as far as the table above. */
const wordsOver = (view: SheetView, table: FoundTable, tables: readonly FoundTable[]): Cell[] => {
  const found: Cell[] = [];
  const upTo = Math.max(
    0,
    ...tables
      .filter(
        ({ bottom, left, right }) =>
          bottom < table.top && left <= table.right && right >= table.left,
      )
      .map(({ bottom }) => bottom + 1),
  );
  for (let row = table.top - 1; row >= Math.max(upTo, table.top - MAX_HEADING); row--)
    for (const cell of view.rows[row] ?? []) {
      const at = view.turned ? cell.row : cell.column;
      if (
        typeof cell.value === "string" &&
        cell.text.length > 1 &&
        at >= table.left - 1 &&
        at <= table.right
      )
        found.push(cell);
    }
  return found;
};

/** The instruments of a list: a column of their numbers and one of the days until which they are calibrated. */
const instrumentsOf = (
  view: SheetView,
  table: FoundTable,
  columns: readonly SurveyColumn[],
): SurveyInstrument[] => {
  const due = columns.find(({ concept }) => concept === "due");
  if (!due || columns.some(({ concept }) => concept === "panel" || concept === "result")) return [];
  const found: SurveyInstrument[] = [];
  for (let row = table.head + 1; row <= table.bottom; row++) {
    const end = view.at(row, due.at);
    const first = view.at(row, table.left);
    const day = end && dayOf(end);
    if (!end || !first || day === undefined) continue;
    const ids = columns.filter(
      ({ concept, at }) => at === table.left || concept === "instrument" || concept === "serial",
    );
    for (const { at } of ids) {
      const cell = view.at(row, at);
      if (cell) found.push({ id: cell.text, due: day, sheet: view.name, address: end.address });
    }
  }
  return found;
};

/** The panel that a form names. */
const panelOfLabels = (labels: readonly Label[]): string | undefined =>
  labels.find(({ concept, value }) => concept === "panel" && value !== undefined)?.value?.text;

interface Found {
  readonly view: SheetView;
  readonly table: FoundTable;
  readonly columns: readonly SurveyColumn[];
}

/** Whether tables share cells of the sheet, whichever way they are read. */
const overlap = (one: Found, other: Found): boolean => {
  const [rows, columns] = one.view.turned
    ? [
        [one.table.left, one.table.right],
        [one.table.top, one.table.bottom],
      ]
    : [
        [one.table.top, one.table.bottom],
        [one.table.left, one.table.right],
      ];
  const { top, bottom, left, right } = other.table;
  return (
    (rows?.[0] ?? 0) <= bottom &&
    top <= (rows?.[1] ?? 0) &&
    (columns?.[0] ?? 0) <= right &&
    left <= (columns?.[1] ?? 0)
  );
};

/** What a sheet holds. */
function surveySheet(view: SheetView): {
  blocks: Block[];
  instruments: SurveyInstrument[];
  labels: Label[];
} {
  const upright = findTables(view).map(
    (table): Found => ({ view, table, columns: nameColumns(view, table) }),
  );
  const side = turn(view);
  const across = findTables(side).map(
    (table): Found => ({ view: side, table, columns: nameColumns(side, table) }),
  );
  const instruments = upright.flatMap(({ table, columns }) => instrumentsOf(view, table, columns));
  const tables = upright.map(({ table }) => table);
  const taken = upright.map(({ table }) => inTable(view, table));
  const labels = readLabels(view, (cell) => !taken.some((has) => has(cell)));
  const headings = new Set(upright.flatMap(({ table }) => headingOf(view, table, tables)));
  const general = joinFacts(factsOfLabels(labels), notesOf(view, taken, headings));
  const read = (found: Found, all: readonly FoundTable[]): [Found, Block][] => {
    const { table, columns } = found;
    if (instruments.length > 0 && columns.some(({ concept }) => concept === "due")) return [];
    const words = wordsOver(found.view, table, all);
    const facts = headingOf(found.view, table, all).map(factsIn).reduce(joinFacts, NO_FACTS);
    const block = readTable({
      ...found,
      around: {
        facts: joinFacts(facts, general),
        words: [...words.map(({ text }) => text), view.name],
        panel: panelOfLabels(labels) ?? view.name,
      },
    });
    return block ? [[found, block]] : [];
  };
  const blocks = upright.flatMap((found) => read(found, tables));
  const turned = across.flatMap((found) =>
    blocks.some(([other]) => overlap(found, other))
      ? []
      : read(
          found,
          across.map(({ table }) => table),
        ),
  );
  return { blocks: [...blocks, ...turned].map(([, block]) => block), instruments, labels };
}

/** The heading of a table: the words close over it, or all between it and the table above. */
const headingOf = (view: SheetView, table: FoundTable, tables: readonly FoundTable[]): Cell[] => {
  const isFirst = !tables.some(({ bottom }) => bottom < table.top);
  return wordsOver(view, table, tables).filter((cell) => {
    const row = view.turned ? cell.column : cell.row;
    return !isFirst || row >= table.top - 2;
  });
};

/** Limits and the like that notes beside the tables tell for the whole sheet. */
const notesOf = (
  view: SheetView,
  taken: readonly ((cell: Cell) => boolean)[],
  headings: ReadonlySet<Cell>,
) =>
  view.rows
    .flat()
    .filter(
      (cell) =>
        typeof cell.value === "string" &&
        cell.text.length > 4 &&
        !isValue(cell) &&
        !headings.has(cell) &&
        !taken.some((has) => has(cell)),
    )
    .map(factsIn)
    // What a test was done at is said over its table; beside the tables only limits and days count.
    .map(({ limits, day, dayAddress }) => ({ limits, day, dayAddress }))
    .reduce(joinFacts, NO_FACTS);

/**
 * Finds the records of a workbook that keeps them in layouts of its own, without a lineup: tables by their
 * titles, units and values, with what headings, labels and notes say.
 */
export function surveyBook(snapshot: Snapshot): Survey {
  const views = snapshot.sheets.flatMap((sheet) => viewSheet(sheet) ?? []);
  const sheets = views.map(surveySheet);
  return {
    blocks: sheets.flatMap(({ blocks }) => blocks),
    instruments: sheets.flatMap(({ instruments }) => instruments),
    labels: sheets.flatMap(({ labels }) => labels),
  };
}
