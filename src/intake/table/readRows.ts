import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { answer, type Result, refuse } from "../../quantities/result";
import type { RowWithUnits } from "../columns/unitsBeside";
import type { ExportRow } from "../columns/unpivot";
import type { TextRow } from "../text/delimited";
import { lineIndex } from "../text/lineIndex";
import { knownTitles } from "../words/fieldNames";
import { isForeign } from "../words/languageOf";
import { mappable, mappedTo } from "../words/mappedTo";
import type { OrderEvidence } from "../words/readDate";
import { titleWords } from "../words/synonyms";
import type { ExportColumn } from "../words/titles";
import { blockReader, type EnteredBlock, wholeLine } from "./enterBlock";
import type { Evidence } from "./evidence";
import { type ExportOptions, layoutOptions } from "./exportOptions";
import type { EachRow, ExportBlock, ExportTable } from "./exportTable";
import type { Block } from "./facts";
import { take } from "./findDelimiter";
import { firstHead, type Head, type LayoutOptions, LOOK_ROWS, MAX_COLUMNS } from "./head";
import { type Inspection, inspected } from "./inspection";
import { layout, type Skipped } from "./layout";
import { type WritingWatch, writingWatch } from "./writingWatch";

const SKIPPED_TOLD = 1000;

/** What reading a file once has gathered of it. */
interface GatheredFile {
  readonly blocks: EnteredBlock[];
  /** How many lines of readings each block has. */
  readonly lines: number[];
  readonly index: ReturnType<typeof lineIndex>;
  readonly watch: WritingWatch;
  readonly skipped: Skipped[];
  skippedCount: number;
}

/**
 * Reads an export whose rows are parted already, such as those of a sheet.
 *
 * @param rows reads them from the start each time it is called
 */
export const readRows = (
  rows: () => Iterable<TextRow>,
  delimiter: Evidence<string>,
  options: ExportOptions,
): Result<ExportTable, Told> => {
  const { name, mapping = {} } = options;
  const file = quoted(name, 80);
  const unknown = Object.values(mapping).find((field) => mappedTo(field) === undefined);
  if (unknown !== undefined)
    return refuse("wrong", (told) =>
      told.intake.titles.unknownField(quoted(unknown), mappable(told)),
    );
  const how = layoutOptions(options);
  const first = take(rows(), LOOK_ROWS);
  const head = readableHead(first, how, file);
  if (!head.ok) return head;
  const enter = blockReader(rows, first, head.value, how, options);
  const gathered = gather(layout(rows(), head.value, how), enter, options);
  return gathered.ok
    ? answer(tableOf(gathered.value, rows, delimiter, options))
    : refuse("wrong", (words) => words.intake.titles.of(file, gathered.say(words)));
};

/** The first titles, or why there are none that could be read. */
const readableHead = (
  first: readonly TextRow[],
  how: LayoutOptions,
  file: string,
): Result<Head, Told> => {
  const widest = first.find(({ cells }) => cells.length > MAX_COLUMNS);
  if (widest)
    return refuse("wrong", ({ intake }) =>
      intake.titles.tooWide(file, widest.cells.length, widest.line, MAX_COLUMNS),
    );
  const head = firstHead(first, how);
  return head && head.recognised >= (how.titles === undefined ? 2 : 1)
    ? answer(head)
    : refuse("wrong", ({ intake }) =>
        intake.titles.none(file, shownOf(widestTitles(first)), knownTitles(), unclosedIn(first)),
      );
};

/** Reads a file's parts once, one by one. */
const gather = (
  parts: ReturnType<typeof layout>,
  enter: (found: Parameters<ReturnType<typeof blockReader>>[0]) => EnteredBlock,
  options: ExportOptions,
): Result<GatheredFile, Told> => {
  const watch = writingWatch(titleWords(options.synonyms), options);
  const gathered: GatheredFile = {
    blocks: [],
    lines: [],
    index: lineIndex(),
    watch,
    skipped: [],
    skippedCount: 0,
  };
  const current: Current = { table: -1, isBySelf: false, rowsOf: () => [] };
  const known = new Map<Block, number>();
  for (const part of parts)
    if (part.row) gatherRow(gathered, current, part.row, part.like);
    else if (part.block) {
      const at = known.get(part.block) ?? gathered.blocks.length;
      const refused = known.has(part.block) ? undefined : addBlock(gathered, enter(part.block));
      if (refused !== undefined) return refuse("wrong", refused);
      known.set(part.block, at);
      goOnWith(current, at, gathered.blocks[at] as EnteredBlock);
    } else skip(gathered, part.skipped);
  return answer(gathered);
};

/** The block that lines are of, and how they are read. */
interface Current {
  table: number;
  isBySelf: boolean;
  rowsOf: RowsOfLine;
}

const goOnWith = (current: Current, table: number, block: EnteredBlock): void => {
  current.table = table;
  current.isBySelf = isBySelf(block);
  current.rowsOf = rowsOfLine(block);
};

/** Adds a block, or says why it cannot be read. */
const addBlock = (
  { blocks, lines, watch }: GatheredFile,
  entered: EnteredBlock,
): Said<Told> | undefined => {
  if (entered.refused !== undefined) return entered.refused;
  blocks.push(entered);
  lines.push(0);
  watch.enter(entered.block.facts, entered.exported.columns, entered.exported.facts);
  return undefined;
};

const gatherRow = (
  { lines, index, watch }: GatheredFile,
  { table, isBySelf, rowsOf }: Current,
  row: TextRow,
  same: number | undefined,
): void => {
  const like = isBySelf ? same : undefined;
  lines[table] = (lines[table] ?? 0) + 1;
  index.add(row.line, table, like);
  // What is said again word for word tells nothing new.
  if (like === undefined) noteAll(watch, rowsOf(row));
};

/** Whether each line of a block tells by itself what it is of; not so where the lines above it tell it as well. */
const isBySelf = ({ columns }: EnteredBlock): boolean =>
  columns.every(({ below, from }) => !below && (!from || "part" in from || "beside" in from));

const noteAll = (watch: WritingWatch, rows: Iterable<ExportRow>): void => {
  for (const row of rows) watch.note(row);
};

const skip = (gathered: GatheredFile, skipped: Skipped): void => {
  gathered.skippedCount += 1;
  if (gathered.skipped.length < SKIPPED_TOLD) gathered.skipped.push(skipped);
};

type RowsOfLine = (row: TextRow) => Iterable<ExportRow>;

/** Makes the reader of a block's lines: the one row of each, or its rows by phase. */
const rowsOfLine = ({ columns, unpivoted: { rowsOf } }: EnteredBlock): RowsOfLine => {
  const whole = wholeLine(columns);
  if (rowsOf) return (row) => rowsOf(whole(row));
  const single: RowWithUnits[] = [];
  return (row) => {
    single[0] = whole(row);
    return single;
  };
};

const tableOf = (
  gathered: GatheredFile,
  rows: () => Iterable<TextRow>,
  delimiter: Evidence<string>,
  options: ExportOptions,
): ExportTable => {
  const { watch, index } = gathered;
  const decimal = watch.decimal();
  const dateOrder = orderByLanguage(watch.dates(), gathered.blocks);
  const blocks = gathered.blocks.map(({ exported }) => exported);
  function* each(): Generator<EachRow> {
    const readers = gathered.blocks.map(rowsOfLine);
    for (const { row, table, like } of index.linesOf(rows())) {
      const { exported: block, unpivoted } = gathered.blocks[table] as EnteredBlock;
      for (const read of (readers[table] as RowsOfLine)(row))
        yield unpivoted.rowsOf ? { block, row: read } : { block, row: read, like };
    }
  }
  return {
    name: options.name,
    delimiter: delimiter.value,
    decimal,
    dates: dateOrder.value,
    positions: watch.positions,
    header: blocks[0]?.header ?? {},
    columns: blocks.length === 1 ? (blocks[0]?.columns ?? []) : distinct(blocks),
    blocks,
    get rows() {
      return Array.from(
        each(),
        ({ row: { line, cells, from } }): ExportRow => ({ line, cells, ...(from && { from }) }),
      );
    },
    each,
    inspection: inspectionOf(gathered, { delimiter, decimal, dateOrder }, options),
  };
};

/** In other languages than English the day comes first; English is written both ways. */
const orderByLanguage = (
  found: OrderEvidence,
  blocks: readonly EnteredBlock[],
): Inspection["dateOrder"] => {
  const isOpen = found.value === undefined && found.confidence === "open" && !found.isContradicted;
  const texts = blocks.flatMap(({ block: { head, facts, headings } }) => [
    ...head.texts.flat(),
    ...facts.map(({ key }) => key),
    ...headings,
  ]);
  return isOpen && isForeign(texts)
    ? {
        value: "day-first",
        evidence: ({ intake }) => intake.seen.orderByLanguage,
        confidence: "likely",
      }
    : found;
};

const inspectionOf = (
  { blocks, lines, skipped, skippedCount }: GatheredFile,
  {
    delimiter,
    decimal,
    dateOrder,
  }: Pick<Inspection, "delimiter" | "dateOrder"> & Pick<ExportTable, "decimal">,
  options: ExportOptions,
): Inspection => ({
  encoding: options.encoding,
  delimiter,
  decimal: {
    value: decimal.mark,
    evidence: decimal.evidence,
    confidence: decimal.isOpen ? "open" : "certain",
  },
  dateOrder,
  blocks: blocks.map(({ block, shape, unit }, at) => ({
    ...inspected(block, lines[at] ?? 0, shape, options, titleWords(options.synonyms)),
    ...(unit && { unit }),
  })),
  skipped,
  skippedCount,
});

const distinct = (blocks: readonly ExportBlock[]): ExportColumn[] => [
  ...new Map(
    blocks.flatMap(({ columns }) =>
      columns.map((column): [string, ExportColumn] => [`${column.title} ${column.field}`, column]),
    ),
  ).values(),
];

/** The first line whose quotation mark does not close. */
const unclosedIn = (rows: readonly TextRow[]): number | undefined =>
  rows.find(({ unclosed }) => unclosed)?.line;

const widestTitles = (rows: readonly TextRow[]): readonly string[] =>
  rows.reduce<readonly string[]>(
    (widest, { cells }) => (cells.length > widest.length ? cells : widest),
    [],
  );

const shownOf = (titles: readonly string[]): string[] =>
  titles
    .filter((title) => title !== "")
    .slice(0, 12)
    .map((title) => quoted(title));
