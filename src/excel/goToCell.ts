import { inWords } from "./errorWords";

/** The sheet and the first cell of what is selected: one round trip. */
export const selectedCell = (
  context: Excel.RequestContext,
): Promise<{ readonly sheet: string; readonly address: string }> =>
  inWords("Asking which cell is selected", async () => {
    const range = context.workbook.getSelectedRange().getCell(0, 0).untrack();
    range.load("address");
    await context.sync();
    const at = range.address.lastIndexOf("!");
    const sheet = range.address.slice(0, at).replace(/^'(.*)'$/, "$1");
    return { sheet: sheet.replaceAll("''", "'"), address: range.address.slice(at + 1) };
  });

/** Selects a cell and brings its sheet to the front: one round trip. */
export const goTo = (
  context: Excel.RequestContext,
  sheet: string,
  address: string,
): Promise<void> =>
  inWords(`Going to ${sheet}!${address}`, async () => {
    const worksheet = context.workbook.worksheets.getItem(sheet);
    worksheet.activate();
    worksheet.getRange(address).untrack().select();
    await context.sync();
  });
