import {
  NAMESPACE,
  REMEMBERED_NAMESPACE,
  readMemoryXml,
  readRememberedXml,
} from "../memory/memory";
import type { CellValue } from "../records/kind";
import { BookError } from "../sheets/bookError";
import type { SheetRows, TableRows } from "../sheets/editedRows";
import type { SheetCells, Snapshot, TableSnapshot } from "../sheets/snapshot";
import { asCell, asFormula } from "./cellValues";
import { BATCH_BYTES, BATCH_CELLS, OBJECT_BYTES, sentBytes, type Watched } from "./chunks";
import { excelCode, inWords } from "./errorWords";
import { type Beside, besides } from "./readBeside";
import { storedFormula } from "./storedFormula";

/** A block of cells while it is being read: a table's body, or a sheet as far as it is used. */
interface Block {
  /** As messages name it. */
  readonly title: string;
  readonly range: () => Excel.Range;
  /** Sheet row and column of its first cell, from 0. */
  readonly first: number;
  readonly left: number;
  readonly rowCount: number;
  readonly columnCount: number;
  /** Bytes that a row is expected to take in an answer: the first one's, then the most seen on average. */
  rowBytes: number;
  readonly values: unknown[][];
  readonly formulas: unknown[][];
}

interface TableBlock extends Block {
  readonly name: string;
  readonly sheet: string;
  readonly headers: readonly string[];
  /** Rows of the body that are hidden or filtered away, from 0. */
  readonly hidden: ReadonlySet<number>;
}

/** Rows of one block, to be asked for as a whole. */
interface Piece {
  readonly block: Block;
  readonly from: number;
  readonly count: number;
  readonly bytes: number;
}

export interface ReadOptions extends Watched {
  /** Whether sheets without tables are read too; else only those that the workbook's maps name. */
  readonly everySheet?: boolean;
}

/**
 * What the open workbook holds: its tables, our memory, and the sheets in somebody's own layout that are
 * mapped. Two round trips, however many tables there are, two or three more for sheets without tables,
 * then as many as their content needs at up to 4 MB each.
 *
 * @param context a request context of Excel, as `Excel.run` gives it
 * @throws {BookError} with what stands in the way, and when the workbook changes while it is read
 */
export const readExcel = (
  context: Excel.RequestContext,
  { everySheet = false, ...watched }: ReadOptions = {},
): Promise<Snapshot> =>
  inWords("Reading the workbook", async () => {
    const { workbook } = context;
    const tables = workbook.tables;
    tables.load("items/name,items/worksheet/name");
    const sheets = workbook.worksheets;
    sheets.load("items/id,items/name,items/visibility");
    const ours = [NAMESPACE, REMEMBERED_NAMESPACE].map((namespace) => {
      const parts = workbook.customXmlParts.getByNamespace(namespace);
      parts.load("items/id");
      return parts;
    });
    await context.sync();

    watched.signal?.throwIfAborted();
    const [memories = [], remembered = []] = ours.map(({ items }) =>
      items.map((part) => part.getXml()),
    );
    const blocks = await outlines(context, tables.items);
    const known = firstOf(remembered, readRememberedXml);
    const plain = sheets.items.filter(({ name }) =>
      everySheet
        ? blocks.every(({ sheet }) => sheet !== name)
        : known?.maps.some(({ sheet }) => sheet === name),
    );
    const used = new Map(
      plain.length > 0 ? await usedRanges(context, plain) : ([] as [string, Block][]),
    );
    const beside = plain.length > 0 ? await besides(context, plain) : undefined;
    await readRows(context, [...blocks, ...used.values()], watched);

    return {
      sheets: sheets.items.map((sheet) => {
        const { id, name, visibility } = sheet;
        const cells = used.get(name);
        return {
          id,
          name,
          ...(visibility === "Visible" ? {} : { hidden: true }),
          tables: blocks.filter(({ sheet }) => sheet === name).map(tableSnapshot),
          ...(cells ? { cells: sheetCells(cells, beside?.get(sheet)) } : {}),
        };
      }),
      lineup: firstOf(memories, readMemoryXml)?.lineup,
      ...known,
    };
  });

const firstOf = <T>(
  xml: readonly OfficeExtension.ClientResult<string>[],
  read: (xml: string) => T | undefined,
): T | undefined => xml.map(({ value }) => read(value)).find((one) => one !== undefined);

/** Where each table stands, its headers, and its first row as a sample of its bytes. */
async function outlines(
  context: Excel.RequestContext,
  tables: readonly Excel.Table[],
): Promise<TableBlock[]> {
  const asked = tables.map((item) => {
    const body = item.getDataBodyRange().untrack();
    body.load("rowIndex,columnIndex,rowCount,columnCount,rowHidden");
    const sample = body.getRow(0).untrack();
    sample.load("values,formulas");
    const columns = item.columns;
    columns.load("items/name");
    return { item, body, sample, columns };
  });
  await context.sync();
  const hidden = await hiddenRows(context, asked);
  return asked.map(({ item, body, sample, columns }) => ({
    title: `The table ${item.name}`,
    name: item.name,
    sheet: item.worksheet.name,
    headers: columns.items.map(({ name }) => name),
    range: () => item.getDataBodyRange(),
    hidden: hidden.get(body) ?? new Set(),
    ...blockOf(body, sample),
  }));
}

/** The rows that are not shown of those bodies that have some: one round trip, where there are any. */
async function hiddenRows(
  context: Excel.RequestContext,
  tables: readonly { readonly item: Excel.Table; readonly body: Excel.Range }[],
): Promise<Map<Excel.Range, ReadonlySet<number>>> {
  // Excel says null where some rows are hidden and others are not.
  const asked = tables
    .filter(({ body }) => body.rowHidden !== false)
    .map(({ item, body }) => {
      const range = item.getDataBodyRange().untrack();
      const { areas } = range.getSpecialCellsOrNullObject("Visible");
      areas.load("items/rowIndex,items/rowCount");
      return { body, areas };
    });
  if (asked.length > 0) await context.sync();
  return new Map(
    asked.map(({ body, areas }) => {
      const hidden = new Set(Array.from({ length: body.rowCount }, (_, row) => row));
      if (!areas.isNullObject)
        for (const { rowIndex, rowCount } of areas.items)
          for (let row = 0; row < rowCount; row++) hidden.delete(rowIndex - body.rowIndex + row);
      return [body, hidden];
    }),
  );
}

/** How far each sheet is used: one round trip. */
async function usedRanges(
  context: Excel.RequestContext,
  sheets: readonly Excel.Worksheet[],
): Promise<[sheet: string, Block][]> {
  const asked = sheets.map((sheet) => {
    const range = () => sheet.getUsedRange(true);
    const body = range().untrack();
    body.load("rowIndex,columnIndex,rowCount,columnCount");
    const sample = body.getRow(0).untrack();
    sample.load("values,formulas");
    return { sheet, range, body, sample };
  });
  await context.sync();
  return asked.map(({ sheet, range, body, sample }) => [
    sheet.name,
    { title: `The sheet "${sheet.name}"`, range, ...blockOf(body, sample) },
  ]);
}

const blockOf = (body: Excel.Range, sample: Excel.Range) => ({
  first: body.rowIndex,
  left: body.columnIndex,
  rowCount: body.rowCount,
  columnCount: body.columnCount,
  rowBytes: sentBytes([sample.values, sample.formulas]) + body.columnCount * 8,
  values: [],
  formulas: [],
});

/** Reads all blocks, in pieces that are cut by what the rows before were seen to take. */
async function readRows(
  context: Excel.RequestContext,
  blocks: readonly Block[],
  { progress, signal, most: asked = BATCH_BYTES }: Watched,
): Promise<void> {
  const total = blocks.reduce((sum, { rowCount }) => sum + rowCount, 0);
  let most = asked;
  for (;;) {
    const pieces = nextBatch(blocks, most);
    if (pieces.length === 0) return;
    signal?.throwIfAborted();
    const queued = pieces.map((piece) => {
      const body = piece.block.range().untrack();
      body.load("rowIndex,rowCount");
      const rows = body
        .getCell(piece.from, 0)
        .untrack()
        .getResizedRange(piece.count - 1, piece.block.columnCount - 1)
        .untrack();
      rows.load("values,formulas");
      return { piece, body, rows };
    });
    try {
      await context.sync();
    } catch (error) {
      // Rows much longer than those before them: ask for fewer.
      if (excelCode(error) !== "ResponsePayloadSizeLimitExceeded" || most < OBJECT_BYTES)
        throw error;
      most /= 4;
      continue;
    }
    for (const { piece, body, rows } of queued) take(piece, body, rows);
    progress?.(
      blocks.reduce((sum, { values }) => sum + values.length, 0),
      total,
    );
  }
}

function take({ block, count }: Piece, body: Excel.Range, rows: Excel.Range) {
  if (body.rowIndex !== block.first || body.rowCount !== block.rowCount)
    throw new BookError(
      `${block.title} was changed while it was read; nothing is lost: read the workbook again.`,
    );
  const { values, formulas } = rows;
  const average = (1.1 * sentBytes([values, formulas])) / count;
  block.rowBytes = block.values.length === 0 ? average : Math.max(block.rowBytes, average);
  for (const row of values) block.values.push(row);
  for (const row of formulas) block.formulas.push(row);
}

/** The rows that come next, of as many blocks as fit into one answer. */
function nextBatch(blocks: readonly Block[], most: number): Piece[] {
  let cells = BATCH_CELLS;
  let bytes = most;
  const pieces: Piece[] = [];
  for (const block of blocks) {
    const from = block.values.length;
    const left = block.rowCount - from;
    if (left === 0) continue;
    const fitting = Math.floor(
      Math.min((bytes - OBJECT_BYTES) / block.rowBytes, cells / block.columnCount),
    );
    const count = Math.min(left, pieces.length === 0 ? Math.max(fitting, 1) : fitting);
    if (count < 1) break;
    const piece = { block, from, count, bytes: OBJECT_BYTES + count * block.rowBytes };
    pieces.push(piece);
    bytes -= piece.bytes;
    cells -= count * block.columnCount;
    if (count < left) break;
  }
  return pieces;
}

/** The cells of a sheet, also those before and after what is used of it. */
function sheetCells(block: Block, beside: Beside = {}): SheetCells {
  const { first, left, rowCount, columnCount, values, formulas } = block;
  const value = (row: number, column: number) => values[row - first]?.[column - left];
  const { merges, note } = beside;
  const cells: SheetCells = {
    rowCount: first + rowCount,
    columnCount: left + columnCount,
    cell: (row, column) => asCell(value(row, column)),
    formula: (row, column) => {
      const text = asFormula(formulas[row - first]?.[column - left], value(row, column));
      return text === undefined ? undefined : storedFormula(text, "");
    },
    merges,
    note,
  };
  blockBehind.set(cells, block);
  return cells;
}

/** What a table or the cells of a sheet were made of. */
const blockBehind = new WeakMap<TableSnapshot | SheetCells, Block>();

function tableSnapshot(block: TableBlock): TableSnapshot {
  const { name, sheet, first, left, headers, rowCount, hidden, values, formulas } = block;
  const stored = new Map<string, string>();
  const snapshot: TableSnapshot = {
    name,
    sheet,
    top: first - 1,
    left,
    headers,
    rowCount,
    ...(hidden.size > 0 ? { hidden } : {}),
    cell: (row, column): CellValue => asCell(values[row]?.[column]),
    formula: (row, column) => {
      const text = asFormula(formulas[row]?.[column], values[row]?.[column]);
      if (text === undefined) return undefined;
      const known = stored.get(text) ?? storedFormula(text, name);
      stored.set(text, known);
      return known;
    },
  };
  blockBehind.set(snapshot, block);
  return snapshot;
}

/**
 * The snapshot with some rows of its tables, and of its sheets in somebody's own layout, read again: one
 * round trip. Undefined where a table or what is used of a sheet is not where or as long as it was, so
 * that the whole workbook has to be read.
 */
export const rereadRows = (
  context: Excel.RequestContext,
  snapshot: Snapshot,
  changed: readonly (TableRows | SheetRows)[],
): Promise<Snapshot | undefined> =>
  inWords("Reading what was edited", async () => {
    const known = changed.map((one) => knownOf(snapshot, one));
    if (!known.every((one) => one !== undefined)) return undefined;
    const asked = known.map((one) => {
      const { first, columnCount } = one.block;
      const body = one.range(context).untrack();
      body.load("rowIndex,columnIndex,rowCount,columnCount");
      const pieces = runs(one.rows).map(({ from, count }) => {
        const piece = body
          .getCell(from - first, 0)
          .untrack()
          .getResizedRange(count - 1, columnCount - 1)
          .untrack();
        piece.load("values,formulas");
        return { from: from - first, piece };
      });
      return { ...one, body, pieces };
    });
    await context.sync();
    const fresh = new Map<object, Block>();
    for (const { of, block, body, pieces } of asked) {
      if (
        body.rowIndex !== block.first ||
        body.columnIndex !== block.left ||
        body.rowCount !== block.rowCount ||
        body.columnCount !== block.columnCount
      )
        return undefined;
      const [values, formulas] = [[...block.values], [...block.formulas]];
      for (const { from, piece } of pieces) {
        values.splice(from, piece.values.length, ...piece.values);
        formulas.splice(from, piece.formulas.length, ...piece.formulas);
      }
      fresh.set(of, { ...block, values, formulas });
    }
    return {
      ...snapshot,
      sheets: snapshot.sheets.map((sheet) => {
        const used = sheet.cells && fresh.get(sheet.cells);
        return {
          ...sheet,
          tables: sheet.tables.map((table) => {
            const block = fresh.get(table);
            return block ? tableSnapshot(block as TableBlock) : table;
          }),
          ...(used ? { cells: sheetCells(used, sheet.cells) } : {}),
        };
      }),
    };
  });

/** What is known of rows that are to be read again; undefined where they are not of this snapshot. */
function knownOf(snapshot: Snapshot, one: TableRows | SheetRows) {
  const of = "table" in one ? one.table : one.cells;
  const block = blockBehind.get(of);
  const sheet = snapshot.sheets.find(({ cells }) => cells === of)?.name;
  if (!block) return undefined;
  const rows = "table" in one ? one.rows.map((row) => block.first + row) : one.rows;
  if (rows.some((row) => row < block.first || row >= block.first + block.rowCount))
    return undefined;
  const range = ({ workbook }: Excel.RequestContext): Excel.Range =>
    "table" in one
      ? workbook.tables.getItem(one.table.name).getDataBodyRange()
      : workbook.worksheets.getItem(sheet ?? "").getUsedRange(true);
  return { of, block, rows, range };
}

/** Numbers in a row put together: 3, 4, 5, 9 are a run of three from 3 and a run of one from 9. */
function runs(rows: readonly number[]): { from: number; count: number }[] {
  const found: { from: number; count: number }[] = [];
  for (const row of [...new Set(rows)].sort((one, other) => one - other)) {
    const last = found.at(-1);
    if (last && last.from + last.count === row) last.count++;
    else found.push({ from: row, count: 1 });
  }
  return found;
}
