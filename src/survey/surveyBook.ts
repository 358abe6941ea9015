import { parseA1Range } from "@borgar/fx/xlsx";
import { dateOrder } from "../intake/words/readDate";
import type { DateOrder } from "../quantities/dates";
import { type Unit, unitSize } from "../quantities/units";
import type { Correction } from "../sheets/kept/surveyAnswers";
import type { Snapshot } from "../sheets/snapshot";
import { correctedColumns, correctionsOn, pointedCells } from "./corrections";
import type { Block, Facts, Label, Survey, SurveyColumn, SurveyInstrument } from "./find/block";
import { factsIn, factsOfLabels, joinFacts, NO_FACTS } from "./find/findFacts";
import { LIMIT_LINES } from "./find/findLines";
import { type FoundTable, findTables } from "./find/findTables";
import { classOf } from "./find/kindOf";
import { lineTables } from "./find/lineTables";
import { nameColumns } from "./find/nameColumns";
import { type Cell, isValue, type SheetView, turn, viewSheet } from "./read/cells";
import { readLabels } from "./read/readLabels";
import { readTable } from "./read/readTable";
import { splitCells } from "./read/splitCells";
import { dayOf } from "./understand/dayOf";
import { stageIn } from "./understand/stageIn";
import { unitIn } from "./understand/unitIn";
import { conceptOf } from "./words/sheetWords";
import type { Concept } from "./words/words";

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
  if (!due || columns.some(({ concept }) => concept === "reading" || concept === "result"))
    return [];
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
  /** Titles that count for the whole table. */
  readonly above?: readonly Cell[];
  /** The columns as they stand on the sheet, of a table that was turned. */
  readonly upright?: readonly SurveyColumn[];
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

/** Words over a table that name a panel: "BREAKER 52-A1", "Cub 3". */
const panelOver = (words: readonly Cell[]): string | undefined =>
  words.find(({ text }) => {
    if (text.length > 30) return false;
    const rest = text.replace(/\S*\d\S*/g, " ").trim();
    return /\d/.test(text) && rest !== "" && conceptOf(rest) === "panel";
  })?.text;

/** Quantities in which no readings come, and that headings tell of a test all the same. */
const CONDITIONS: readonly string[] = ["temperature", "share"];

/** The unit in which a heading says that values are; a unit behind a number is a condition before it is that. */
const unitOver = (words: readonly Cell[]): Unit | undefined => {
  // "mA at volts": what comes after is the condition.
  const parts = words.flatMap(({ text }) => [
    text,
    ...text.split(/[,;]/).flatMap((part) => [part, part.split(/ (?:at|bei|à|a|@) /u)[0] ?? part]),
  ]);
  const units = parts.flatMap((text) => {
    const unit = unitIn(text);
    return unit !== undefined && unit.length > 1
      ? [{ unit, isCondition: CONDITIONS.includes(unitSize(unit).quantity) }]
      : [];
  });
  return units.find(({ isCondition }) => !isCondition)?.unit ?? units[0]?.unit;
};

/** A sheet on its way to be blocks. */
interface Sheet {
  readonly view: SheetView;
  readonly tables: readonly FoundTable[];
  readonly labels: readonly Label[];
  readonly general: Facts;
  /** The words at the top of the sheet. */
  readonly top: readonly Cell[];
  /** Cells that somebody has pointed at. */
  readonly pointed: Partial<Record<Concept, Cell>>;
}

/** A unit of readings that another column of the table has, such as that of its lowest value. */
const unitOfColumns = (columns: readonly SurveyColumn[]) =>
  columns.find(({ unit }) => unit !== undefined && classOf(unit).endsWith(" resistance"))?.unit;

/** The unit of what is called for beside panels that stand across: "Required N·m". */
const unitCalledFor = (columns: readonly SurveyColumn[] = []) =>
  columns.find(
    ({ concept, unit }) =>
      unit !== undefined && unit !== "%" && concept !== undefined && LIMIT_LINES.includes(concept),
  )?.unit;

/** The unit of the one quantity that headings bound: "limit 10 mΩ" over values without a unit. */
const unitOfLimits = ({ limits }: Facts): Unit | undefined => {
  const units = new Set(limits.flatMap(({ unit }) => (unit && unit !== "%" ? [unit] : [])));
  return units.size === 1 ? [...units][0] : undefined;
};

/** A table with what stands around it, read as records. */
const readFound = (sheet: Sheet, over: FoundTable, found: Found): Block | undefined => {
  const { view, tables, labels, general } = sheet;
  const { above = [] } = found;
  const words = [...above, ...wordsOver(view, over, tables)];
  const heading = [...above, ...headingOf(view, over, tables)];
  const told =
    unitOver(words) ??
    unitOfColumns(found.columns) ??
    unitCalledFor(found.upright) ??
    unitOver(sheet.top);
  const facts = heading.map((cell) => factsIn(cell, told)).reduce(joinFacts, NO_FACTS);
  const near = labels.filter(({ address }) => isOver(address, over, tables));
  const panel = panelOver(words) ?? panelOfLabels(near) ?? panelOfLabels(labels);
  return readTable({
    ...found,
    around: {
      heading: words,
      facts: joinFacts(facts, joinFacts(factsOfLabels(near), general)),
      words: [...words.map(({ text }) => text), ...sheet.top.map(({ text }) => text), view.name],
      panel: panel ?? view.name,
      isPanelTold: panel !== undefined,
      pointed: sheet.pointed,
      unit: told ?? unitOfLimits(facts) ?? (tables.length > 1 ? undefined : unitOfLimits(general)),
      stage: stageIn([view.name, ...words.map(({ text }) => text).reverse()]),
    },
  });
};

/** Whether a label stands over a table, in its columns and not beyond the table above. */
const isOver = (
  address: string,
  { top, left, right }: FoundTable,
  tables: readonly FoundTable[],
): boolean => {
  const at = parseA1Range(address);
  const [row, column] = [at?.top ?? 0, at?.left ?? 0];
  const above = Math.max(
    -1,
    ...tables
      .filter((one) => one.bottom < top && one.left <= right && one.right >= left)
      .map(({ bottom }) => bottom),
  );
  return row < top && row > above && column >= left && column <= right;
};

/** What a sheet holds. */
function surveySheet(
  view: SheetView,
  corrections: readonly Correction[],
): {
  blocks: Block[];
  instruments: SurveyInstrument[];
  labels: Label[];
} {
  const said = correctionsOn(view, corrections);
  const named = (of: SheetView, table: FoundTable, has = said) =>
    correctedColumns(nameColumns(of, table), table, has);
  const upright = findTables(view, said.heads).map(
    (table): Found => ({ view, table, columns: named(view, table) }),
  );
  const instruments = upright.flatMap(({ table, columns }) => instrumentsOf(view, table, columns));
  const tables = upright.map(({ table }) => table);
  const taken = tables.map((table) => inTable(view, table));
  const labels = readLabels(view, (cell) => !taken.some((has) => has(cell)));
  const headings = new Set(tables.flatMap((table) => headingOf(view, table, tables)));
  const first = Math.min(...tables.map(({ top }) => top));
  const atTop = labels.filter(({ address }) => (parseA1Range(address)?.top ?? 0) < first);
  const general = joinFacts(factsOfLabels(atTop), notesOf(view, taken, headings));
  const top = tables[0] ? wordsOver(view, tables[0], tables) : [];
  const sheet: Sheet = { view, tables, labels, general, top, pointed: pointedCells(view, said) };
  const lists = upright.filter(
    ({ columns }) => instruments.length > 0 && columns.some(({ concept }) => concept === "due"),
  );
  const blocks = upright.flatMap((found): [Found, Block][] => {
    if (lists.includes(found)) return [];
    const apart = splitCells(view, found.table);
    const columns = apart.view === view ? found.columns : named(apart.view, apart.table);
    const lines = lineTables(apart.view, apart.table, columns);
    const parts = lines?.map(
      ({ panelAt, ...one }): Found => ({
        ...one,
        upright: columns,
        columns: nameColumns(one.view, one.table).map((column) =>
          column.at === panelAt ? { ...column, concept: "panel" as const } : column,
        ),
      }),
    ) ?? [{ ...apart, columns }];
    return parts.flatMap((part): [Found, Block][] => {
      const block = readFound(sheet, found.table, part);
      return block ? [[found, block]] : [];
    });
  });
  const side = turn(view);
  const across = findTables(side).map(
    (table): Found => ({
      view: side,
      table,
      columns: named(side, table, correctionsOn(side, corrections)),
    }),
  );
  const turned = across
    .filter(
      ({ columns }) =>
        columns.filter(({ concept, position }) => concept !== undefined && position === undefined)
          .length >= 2,
    )
    .filter(
      (found) =>
        ![...lists, ...blocks.map(([other]) => other)].some((other) => overlap(found, other)),
    )
    .flatMap((found) => {
      const block = readFound(
        { ...sheet, view: side, tables: across.map(({ table }) => table) },
        found.table,
        found,
      );
      return block ? [block] : [];
    });
  return { blocks: [...blocks.map(([, block]) => block), ...turned], instruments, labels };
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
    .map((cell) => factsIn(cell))
    // What a test was done at is said over its table; beside the tables only limits and days count.
    .map(({ limits, day, dayAddress }) => ({ limits, day, dayAddress }))
    .reduce(joinFacts, NO_FACTS);

/**
 * Finds the records of a workbook that keeps them in layouts of its own, without a lineup: tables by their
 * titles, units and values, with what headings, labels and notes say.
 *
 * @param assumed the order of day and month where no date of the workbook shows it
 */
export function surveyBook(
  snapshot: Snapshot,
  assumed: DateOrder = "day-first",
  corrections: readonly Correction[] = [],
): Survey {
  const order = orderOf(snapshot) ?? assumed;
  const views = snapshot.sheets.flatMap((sheet) => viewSheet(sheet, order) ?? []);
  const sheets = views.map((view) => surveySheet(view, corrections));
  return {
    blocks: sheets.flatMap(({ blocks }) => blocks),
    instruments: sheets.flatMap(({ instruments }) => instruments),
    labels: sheets.flatMap(({ labels }) => labels),
  };
}

const DATE = /(?<!\d)\d{1,2}[/-]\d{1,2}[/-]\d{2,4}(?!\d)/g;

/** Which of day and month comes first in a workbook, by the dates that can be read one way only. */
const orderOf = ({ sheets }: Snapshot): DateOrder | undefined => {
  const dates: string[] = [];
  for (const { cells } of sheets)
    for (let row = 0; row < (cells?.rowCount ?? 0); row++)
      for (let column = 0; column < (cells?.columnCount ?? 0); column++) {
        const value = cells?.cell(row, column);
        if (typeof value === "string" && value.length < 300)
          dates.push(...(value.match(DATE) ?? []));
      }
  return dateOrder(dates).value;
};
