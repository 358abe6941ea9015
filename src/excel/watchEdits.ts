import { inWords } from "./read/errorWords";

/** Cells that somebody edited or selected: the sheet by its id, the cells by their address. */
export interface Touched {
  readonly sheetId: string;
  readonly address: string;
  /** True where rows, columns or cells were put in or taken out, so that others moved. */
  readonly moved: boolean;
}

/** Asks Excel to tell of every edit and every selection from now on: one round trip. */
export const listen = (
  context: Excel.RequestContext,
  told: { readonly edited: (cells: Touched) => void; readonly selected: (cells: Touched) => void },
): Promise<void> =>
  inWords(
    (work) => work.listen,
    async () => {
      const { worksheets } = context.workbook;
      worksheets.onChanged.add(async ({ worksheetId, address, changeType }) =>
        told.edited({ sheetId: worksheetId, address, moved: changeType !== "RangeEdited" }),
      );
      worksheets.onSelectionChanged.add(async ({ worksheetId, address }) =>
        told.selected({ sheetId: worksheetId, address, moved: false }),
      );
      await context.sync();
    },
  );
