import { inWords } from "./read/errorWords";

/** The sheet and the first cell of what is selected: one round trip. */
export const selectedCell = (
  context: Excel.RequestContext,
): Promise<{ readonly sheet: string; readonly address: string }> =>
  inWords(
    (work) => work.selected,
    async () => {
      const range = context.workbook.getSelectedRange().getCell(0, 0).untrack();
      range.load("address");
      await context.sync();
      return placeIn(range.address);
    },
  );

/** The sheet and the cells of an address as Excel gives it: `'Bus A'!B2:B4`. */
export function placeIn(whole: string): { readonly sheet: string; readonly address: string } {
  const at = whole.lastIndexOf("!");
  const sheet = whole.slice(0, at).replace(/^'(.*)'$/, "$1");
  return { sheet: sheet.replaceAll("''", "'"), address: whole.slice(at + 1) };
}

/** Selects a cell and brings its sheet to the front: one round trip. */
export const goTo = (
  context: Excel.RequestContext,
  sheet: string,
  address: string,
): Promise<void> =>
  inWords(
    (work) => work.goTo(`${sheet}!${address}`),
    async () => {
      const worksheet = context.workbook.worksheets.getItem(sheet);
      worksheet.activate();
      worksheet.getRange(address).untrack().select();
      await context.sync();
    },
  );
