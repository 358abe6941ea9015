import { headOf } from "../../look/head";
import { HEADER_ROW } from "../../look/tableLayout";
import type { CellValue } from "../../records/kind";
import { isSameStored } from "../../sheets/cells/cell";
import type { Reconciled } from "../../sheets/plan/reconcile";
import { asCell } from "../read/cellValues";
import { sameName } from "./prepareSheets";

type Made = Reconciled["create"][number];

/**
 * Sheets that were begun and not finished, by work that was cut short, by name: they hold nothing but what
 * is to be put there now. Whether each has a table already. One round trip, and none where the workbook has
 * no sheet of such a name.
 *
 * @param context its tables and sheets loaded with their names
 */
export async function begunSheets(
  context: Excel.RequestContext,
  made: readonly Made[],
): Promise<ReadonlyMap<string, { readonly hasTable: boolean }>> {
  const { tables, worksheets } = context.workbook;
  const asked = made.flatMap((one) => {
    const sheet = worksheets.items.find(({ name }) => sameName(name, one.planned.sheet));
    const table = tables.items.find(({ worksheet }) => worksheet.name === sheet?.name);
    if (!sheet || table?.name === one.planned.table) return [];
    const used = sheet.getUsedRange(true).untrack();
    used.load("values,rowIndex,columnIndex");
    return [{ one, name: sheet.name, used, hasTable: table !== undefined }];
  });
  if (asked.length > 0) await context.sync();
  return new Map(
    asked.flatMap(({ one, name, used, hasTable }): [string, { hasTable: boolean }][] =>
      holdsNoMore(used, contentOf(one)) ? [[name, { hasTable }]] : [],
    ),
  );
}

/** What a new sheet is to hold, by row and column. */
function contentOf({ planned, writes }: Made): ReadonlyMap<string, CellValue> {
  const cells = new Map<string, CellValue>();
  headOf(planned).forEach(({ text, from }, row) => {
    cells.set(`${row},${from}`, text);
  });
  planned.columns.forEach(({ header }, column) => {
    cells.set(`${HEADER_ROW},${column}`, header);
  });
  for (const { row, column, value } of writes)
    cells.set(`${HEADER_ROW + 1 + row},${column}`, value);
  return cells;
}

const holdsNoMore = (
  { values, rowIndex, columnIndex }: Excel.Range,
  content: ReadonlyMap<string, CellValue>,
): boolean =>
  values.every((row, down) =>
    row.every((value, across) => {
      const held = asCell(value);
      const planned = content.get(`${rowIndex + down},${columnIndex + across}`) ?? null;
      return held === null || isSameStored(held, planned);
    }),
  );
