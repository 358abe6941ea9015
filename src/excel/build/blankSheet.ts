import { type Snapshot, tablesOf } from "../../sheets/snapshot";

/**
 * The one sheet that a workbook had before anything was built, where nothing is on it: no cell, no format,
 * no chart, no shape. One round trip, and none for a workbook that had tables or several sheets.
 *
 * @param snapshot the workbook as it was before
 */
export async function blankSheet(
  context: Excel.RequestContext,
  snapshot: Snapshot,
): Promise<string | undefined> {
  const [only, ...others] = snapshot.sheets;
  if (!only || others.length > 0 || tablesOf(snapshot).length > 0) return undefined;
  const sheet = context.workbook.worksheets.getItem(only.name);
  const used = sheet.getUsedRange().untrack();
  used.load("rowIndex,columnIndex,rowCount,columnCount,values");
  const [charts, shapes] = [sheet.charts.getCount(), sheet.shapes.getCount()];
  await context.sync();
  const isOneCell =
    [used.rowIndex, used.columnIndex, used.rowCount, used.columnCount].join() === "0,0,1,1";
  return isOneCell && used.values[0]?.[0] === "" && charts.value + shapes.value === 0
    ? only.name
    : undefined;
}
