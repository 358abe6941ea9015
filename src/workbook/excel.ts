import type { CellValue } from "../records/kind";
import type { Snapshot, TableSnapshot } from "../sheets/snapshot";
import { NAMESPACE, readMemoryXml } from "./memory";

/**
 * What the open workbook holds: its tables and our memory, in two round trips however many tables
 * there are.
 *
 * @param context a request context of Excel
 */
export async function readExcel(context: Excel.RequestContext): Promise<Snapshot> {
  const { workbook } = context;
  const tables = workbook.tables;
  tables.load("items/name,items/showTotals,items/worksheet/name");
  const sheets = workbook.worksheets;
  sheets.load("items/name");
  const part = workbook.customXmlParts.getByNamespace(NAMESPACE).getOnlyItemOrNullObject();
  part.load("id");
  await context.sync();

  const xml = part.isNullObject ? undefined : part.getXml();
  const ranges = tables.items.map((table) => {
    const range = table.getRange();
    range.load("rowIndex,columnIndex,values,formulas");
    return { table, range };
  });
  await context.sync();

  const snapshots = ranges.map(({ table, range }) => tableSnapshot(table, range));
  return {
    sheets: sheets.items.map(({ name }) => ({
      name,
      tables: snapshots.filter(({ sheet }) => sheet === name),
    })),
    lineup: xml === undefined ? undefined : readMemoryXml(xml.value)?.lineup,
  };
}

function tableSnapshot(table: Excel.Table, range: Excel.Range): TableSnapshot {
  const { values, formulas } = range;
  return {
    name: table.name,
    sheet: table.worksheet.name,
    top: range.rowIndex,
    left: range.columnIndex,
    headers: (values[0] ?? []).map(String),
    rowCount: values.length - 1 - (table.showTotals ? 1 : 0),
    cell: (row, column) => (values[row + 1]?.[column] ?? null) as CellValue,
    formula: (row, column) => {
      const text = formulas[row + 1]?.[column];
      return typeof text === "string" && text.startsWith("=") ? text.slice(1) : undefined;
    },
  };
}

/** Selects a cell and brings its sheet to the front: one round trip. */
export async function goTo(
  context: Excel.RequestContext,
  sheet: string,
  address: string,
): Promise<void> {
  const worksheet = context.workbook.worksheets.getItem(sheet);
  worksheet.activate();
  worksheet.getRange(address).select();
  await context.sync();
}
