import type { CellValue } from "../records/kind";
import type { TableSnapshot } from "../sheets/snapshot";
import { asInput } from "./excelCell";
import { inWords } from "./excelWords";

/**
 * Puts a row into a table's first blank row, or at its foot: one round trip.
 *
 * @param values by header; cells of other columns stay blank
 */
export const appendRow = (
  context: Excel.RequestContext,
  { name, headers, rowCount, cell }: TableSnapshot,
  values: ReadonlyMap<string, CellValue>,
): Promise<void> =>
  inWords(`Writing into ${name}`, async () => {
    const row = headers.map((header) => asInput(values.get(header) ?? null));
    const isFree = (at: number) => headers.every((_, column) => (cell(at, column) ?? "") === "");
    const free = Array.from({ length: rowCount }, (_, at) => at).find(isFree);
    const table = context.workbook.tables.getItem(name);
    if (free === undefined) table.rows.add(undefined, [row]);
    else table.getDataBodyRange().untrack().getRow(free).untrack().values = [row];
    await context.sync();
  });
