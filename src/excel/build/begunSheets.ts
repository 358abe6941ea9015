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

/** What a row is to hold, by column. */
type Cells = Map<number, CellValue>;

/** What a new sheet is to hold: the rows of its head in their places, and those of its table in any order. */
interface Content {
  readonly head: ReadonlyMap<number, Cells>;
  readonly body: readonly Cells[];
}

function contentOf({ planned, writes }: Made): Content {
  const head = new Map<number, Cells>(
    headOf(planned).map(({ text, from }, row) => [row, new Map([[from, text]])]),
  );
  head.set(HEADER_ROW, new Map(planned.columns.map(({ header }, column) => [column, header])));
  const body = new Map<number, Cells>();
  for (const { row, column, value } of writes)
    body.set(row, (body.get(row) ?? new Map()).set(column, value));
  return { head, body: [...body.values()] };
}

/** What is gone on with may have got another row before those that were begun, such as a reading typed meanwhile. */
const holdsNoMore = (
  { values, rowIndex, columnIndex }: Excel.Range,
  { head, body }: Content,
): boolean =>
  values.every((row, down) => {
    const isWithin = (planned: Cells | undefined) =>
      row.every((value, across) => {
        const held = asCell(value);
        return held === null || isSameStored(held, planned?.get(columnIndex + across) ?? null);
      });
    return rowIndex + down > HEADER_ROW
      ? [undefined, ...body].some(isWithin)
      : isWithin(head.get(rowIndex + down));
  });
