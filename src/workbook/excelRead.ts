import type { CellValue } from "../records/kind";
import type { Snapshot, TableSnapshot } from "../sheets/snapshot";
import { BookError } from "./bookError";
import { asCell, asFormula } from "./excelCell";
import { BATCH_BYTES, BATCH_CELLS, OBJECT_BYTES, sentBytes, type Watched } from "./excelChunks";
import { storedFormula } from "./excelFormula";
import { excelCode, inWords } from "./excelWords";
import { NAMESPACE, readMemoryXml } from "./memory";

/** A table while it is being read. */
interface Reading {
  readonly name: string;
  readonly sheet: string;
  readonly item: Excel.Table;
  readonly top: number;
  readonly left: number;
  readonly headers: readonly string[];
  readonly rowCount: number;
  /** Bytes that a row is expected to take in an answer: the first one's, then the most seen on average. */
  rowBytes: number;
  readonly values: unknown[][];
  readonly formulas: unknown[][];
}

/** Rows of one table, to be asked for as a whole. */
interface Piece {
  readonly reading: Reading;
  readonly from: number;
  readonly count: number;
  readonly bytes: number;
}

/**
 * What the open workbook holds: its tables and our memory. Two round trips, however many tables there
 * are, then as many as their content needs at up to 4 MB each.
 *
 * @param context a request context of Excel, as `Excel.run` gives it
 * @throws {BookError} with what stands in the way, and when the workbook changes while it is read
 */
export const readExcel = (
  context: Excel.RequestContext,
  watched: Watched = {},
): Promise<Snapshot> =>
  inWords("Reading the workbook", async () => {
    const { workbook } = context;
    const tables = workbook.tables;
    tables.load("items/name,items/worksheet/name");
    const sheets = workbook.worksheets;
    sheets.load("items/id,items/name");
    const parts = workbook.customXmlParts.getByNamespace(NAMESPACE);
    parts.load("items/id");
    await context.sync();

    watched.signal?.throwIfAborted();
    const xml = parts.items.map((part) => part.getXml());
    const readings = await outlines(context, tables.items);
    await readRows(context, readings, watched);

    return {
      sheets: sheets.items.map(({ id, name }) => ({
        id,
        name,
        tables: readings.filter(({ sheet }) => sheet === name).map(tableSnapshot),
      })),
      lineup: xml.map(({ value }) => readMemoryXml(value)).find((memory) => memory !== undefined)
        ?.lineup,
    };
  });

/** Where each table stands, its headers, and its first row as a sample of its bytes. */
async function outlines(
  context: Excel.RequestContext,
  tables: readonly Excel.Table[],
): Promise<Reading[]> {
  const asked = tables.map((item) => {
    const body = item.getDataBodyRange().untrack();
    body.load("rowIndex,columnIndex,rowCount,columnCount");
    const sample = body.getRow(0).untrack();
    sample.load("values,formulas");
    const columns = item.columns;
    columns.load("items/name");
    return { item, body, sample, columns };
  });
  await context.sync();
  return asked.map(({ item, body, sample, columns }) => ({
    name: item.name,
    sheet: item.worksheet.name,
    item,
    top: body.rowIndex - 1,
    left: body.columnIndex,
    headers: columns.items.map(({ name }) => name),
    rowCount: body.rowCount,
    rowBytes: sentBytes([sample.values, sample.formulas]) + body.columnCount * 8,
    values: [],
    formulas: [],
  }));
}

/** Reads the bodies of all tables, in pieces that are cut by what the rows before were seen to take. */
async function readRows(
  context: Excel.RequestContext,
  readings: readonly Reading[],
  { progress, signal, most: asked = BATCH_BYTES }: Watched,
): Promise<void> {
  const total = readings.reduce((sum, { rowCount }) => sum + rowCount, 0);
  let most = asked;
  for (;;) {
    const pieces = nextBatch(readings, most);
    if (pieces.length === 0) return;
    signal?.throwIfAborted();
    const queued = pieces.map((piece) => {
      const body = piece.reading.item.getDataBodyRange().untrack();
      body.load("rowIndex,rowCount");
      const rows = body
        .getCell(piece.from, 0)
        .untrack()
        .getResizedRange(piece.count - 1, piece.reading.headers.length - 1)
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
      readings.reduce((sum, { values }) => sum + values.length, 0),
      total,
    );
  }
}

function take({ reading, count }: Piece, body: Excel.Range, rows: Excel.Range) {
  if (body.rowIndex !== reading.top + 1 || body.rowCount !== reading.rowCount)
    throw new BookError(
      `The table ${reading.name} was changed while it was read; nothing is lost: read the workbook again.`,
    );
  const { values, formulas } = rows;
  const average = (1.1 * sentBytes([values, formulas])) / count;
  reading.rowBytes = reading.values.length === 0 ? average : Math.max(reading.rowBytes, average);
  for (const row of values) reading.values.push(row);
  for (const row of formulas) reading.formulas.push(row);
}

/** The rows that come next, of as many tables as fit into one answer. */
function nextBatch(readings: readonly Reading[], most: number): Piece[] {
  let cells = BATCH_CELLS;
  let bytes = most;
  const pieces: Piece[] = [];
  for (const reading of readings) {
    const from = reading.values.length;
    const left = reading.rowCount - from;
    if (left === 0) continue;
    const fitting = Math.floor(
      Math.min((bytes - OBJECT_BYTES) / reading.rowBytes, cells / reading.headers.length),
    );
    const count = Math.min(left, pieces.length === 0 ? Math.max(fitting, 1) : fitting);
    if (count < 1) break;
    const piece = { reading, from, count, bytes: OBJECT_BYTES + count * reading.rowBytes };
    pieces.push(piece);
    bytes -= piece.bytes;
    cells -= count * reading.headers.length;
    if (count < left) break;
  }
  return pieces;
}

const readingOf = new WeakMap<TableSnapshot, Reading>();

function tableSnapshot(reading: Reading): TableSnapshot {
  const { name, sheet, top, left, headers, rowCount, values, formulas } = reading;
  const stored = new Map<string, string>();
  const snapshot: TableSnapshot = {
    name,
    sheet,
    top,
    left,
    headers,
    rowCount,
    cell: (row, column): CellValue => asCell(values[row]?.[column]),
    formula: (row, column) => {
      const text = asFormula(formulas[row]?.[column], values[row]?.[column]);
      if (text === undefined) return undefined;
      const known = stored.get(text) ?? storedFormula(text, name);
      stored.set(text, known);
      return known;
    },
  };
  readingOf.set(snapshot, reading);
  return snapshot;
}

/** Rows of one table, as numbers from 0 within its body. */
export interface TableRows {
  readonly table: TableSnapshot;
  readonly rows: readonly number[];
}

/**
 * The snapshot with some rows of its tables read again: one round trip. Undefined where a table is not
 * where or as long as it was, so that the whole workbook has to be read.
 */
export const rereadRows = (
  context: Excel.RequestContext,
  snapshot: Snapshot,
  changed: readonly TableRows[],
): Promise<Snapshot | undefined> =>
  inWords("Reading what was edited", async () => {
    const asked = changed.map(({ table, rows }) => {
      const body = context.workbook.tables.getItem(table.name).getDataBodyRange().untrack();
      body.load("rowIndex,columnIndex,rowCount,columnCount");
      const pieces = runs(rows).map(({ from, count }) => {
        const piece = body
          .getCell(from, 0)
          .untrack()
          .getResizedRange(count - 1, table.headers.length - 1)
          .untrack();
        piece.load("values,formulas");
        return { from, piece };
      });
      return { table, body, pieces };
    });
    await context.sync();
    const fresh = new Map<TableSnapshot, TableSnapshot>();
    for (const { table, body, pieces } of asked) {
      const known = readingOf.get(table);
      if (
        !known ||
        body.rowIndex !== table.top + 1 ||
        body.columnIndex !== table.left ||
        body.rowCount !== table.rowCount ||
        body.columnCount !== table.headers.length
      )
        return undefined;
      const [values, formulas] = [[...known.values], [...known.formulas]];
      for (const { from, piece } of pieces) {
        values.splice(from, piece.values.length, ...piece.values);
        formulas.splice(from, piece.formulas.length, ...piece.formulas);
      }
      fresh.set(table, tableSnapshot({ ...known, values, formulas }));
    }
    return {
      ...snapshot,
      sheets: snapshot.sheets.map((sheet) => ({
        ...sheet,
        tables: sheet.tables.map((table) => fresh.get(table) ?? table),
      })),
    };
  });

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
