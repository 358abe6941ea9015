import { inWords } from "./errorWords";

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
