import type { Told } from "../../messages/told";

/** A block of cells while it is being read: a table's body, or a sheet as far as it is used. */
export interface Block {
  /** As messages name it. */
  /** What it is called in a message. */
  readonly title: (words: Told["excel"]) => string;
  readonly range: () => Excel.Range;
  /** Sheet row and column of its first cell, from 0. */
  readonly first: number;
  readonly left: number;
  readonly rowCount: number;
  readonly columnCount: number;
  /** Its first row. */
  readonly sample: { readonly values: readonly unknown[]; readonly formulas: readonly unknown[] };
  /** Bytes that a row is expected to take in an answer: the first one's, then the most seen on average. */
  rowBytes: number;
  readonly values: unknown[][];
  readonly formulas: unknown[][];
}

export interface TableBlock extends Block {
  readonly name: string;
  readonly sheet: string;
  readonly headers: readonly string[];
  /** Rows of the body that are hidden or filtered away, from 0. */
  readonly hidden: ReadonlySet<number>;
  readonly hiddenColumns: ReadonlySet<number>;
}

/** Where each table stands, its headers, and its first row as a sample of its bytes. */
export async function outlineTables(
  context: Excel.RequestContext,
  tables: readonly Excel.Table[],
): Promise<TableBlock[]> {
  const asked = tables.map((item) => {
    const body = item.getDataBodyRange().untrack();
    body.load("rowIndex,columnIndex,rowCount,columnCount,rowHidden,columnHidden");
    const sample = body.getRow(0).untrack();
    sample.load("values,formulas");
    const columns = item.columns;
    columns.load("items/name");
    return { item, body, sample, columns };
  });
  await context.sync();
  const [hidden, columns] = await hiddenIn(context, asked);
  return asked.map(({ item, body, sample, columns: named }) => ({
    title: ({ table }) => table(item.name),
    name: item.name,
    sheet: item.worksheet.name,
    headers: named.items.map(({ name }) => name),
    range: () => item.getDataBodyRange(),
    hidden: hidden.get(body) ?? new Set(),
    hiddenColumns: columns.get(body) ?? new Set(),
    ...blockOf(body, sample),
  }));
}

type Hidden = ReadonlyMap<Excel.Range, ReadonlySet<number>>;
type Asked = readonly { readonly item: Excel.Table; readonly body: Excel.Range }[];

/** The rows and columns that are not shown of those bodies that have some: one round trip, where there are any. */
async function hiddenIn(
  context: Excel.RequestContext,
  tables: Asked,
): Promise<[rows: Hidden, columns: Hidden]> {
  const [rows, columns] = [askHiddenRows(tables), askHiddenColumns(tables)];
  if (rows.asked + columns.asked > 0) await context.sync();
  return [rows.told(), columns.told()];
}

/** Excel says null where some columns are hidden and others are not. */
function askHiddenColumns(tables: Asked) {
  const asked = tables
    .filter(({ body }) => body.columnHidden !== false)
    .map(({ item, body }) => {
      const range = item.getDataBodyRange().untrack();
      const columns = Array.from({ length: body.columnCount }, (_, column) => {
        const one = range.getColumn(column).untrack();
        one.load("columnHidden");
        return one;
      });
      return { body, columns };
    });
  const told = (): Hidden =>
    new Map(
      asked.map(({ body, columns }) => [
        body,
        new Set(columns.flatMap(({ columnHidden }, column) => (columnHidden ? [column] : []))),
      ]),
    );
  return { asked: asked.length, told };
}

/** Excel says null where some rows are hidden and others are not. */
function askHiddenRows(tables: Asked) {
  const asked = tables
    .filter(({ body }) => body.rowHidden !== false)
    .map(({ item, body }) => {
      const range = item.getDataBodyRange().untrack();
      const { areas } = range.getSpecialCellsOrNullObject("Visible");
      areas.load("items/rowIndex,items/rowCount");
      return { body, areas };
    });
  const told = (): Hidden =>
    new Map(
      asked.map(({ body, areas }) => {
        const hidden = new Set(Array.from({ length: body.rowCount }, (_, row) => row));
        if (!areas.isNullObject)
          for (const { rowIndex, rowCount } of areas.items)
            for (let row = 0; row < rowCount; row++) hidden.delete(rowIndex - body.rowIndex + row);
        return [body, hidden];
      }),
    );
  return { asked: asked.length, told };
}

/** How far each sheet is used: one round trip. */
export async function outlineSheets(
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
    { title: (words) => words.sheet(sheet.name), range, ...blockOf(body, sample) },
  ]);
}

const blockOf = (body: Excel.Range, sample: Excel.Range) => ({
  first: body.rowIndex,
  left: body.columnIndex,
  rowCount: body.rowCount,
  columnCount: body.columnCount,
  sample: { values: sample.values[0] ?? [], formulas: sample.formulas[0] ?? [] },
  rowBytes: 0,
  values: [],
  formulas: [],
});
