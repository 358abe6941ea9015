import { BookError } from "../../sheets/bookError";
import { placeIn } from "../goToCell";
import { inWords } from "./errorWords";

/** Cells of a sheet, with what they hold. */
export interface SelectedCells {
  readonly sheet: string;
  readonly address: string;
  readonly values: readonly (readonly unknown[])[];
}

/** At most so many cells are taken for one argument. */
const MOST = 1000;

/**
 * The cells that are selected, with what they hold: two round trips.
 *
 * @throws {BookError} where more than a thousand are
 */
export const selectedCells = (context: Excel.RequestContext): Promise<SelectedCells> =>
  inWords(
    (work) => work.selectedCells,
    async () => {
      const range = context.workbook.getSelectedRange();
      range.load("address,rowCount,columnCount");
      await context.sync();
      const cells = range.rowCount * range.columnCount;
      if (cells > MOST) throw new BookError(({ excel }) => excel.manySelected(cells, MOST));
      range.load("values");
      await context.sync();
      return { ...placeIn(range.address), values: range.values };
    },
  );

const notEmpty = ({ sheet, address }: Pick<SelectedCells, "sheet" | "address">) =>
  new BookError(({ excel }) => excel.notEmpty(`${sheet}!${address}`));

const isEmpty = (range: Excel.Range) => range.formulas[0]?.[0] === "";

/**
 * Writes a formula into the first of the selected cells, where that is empty: two round trips, and one more
 * where somebody typed there between them, which is put back.
 *
 * @throws {BookError} where it is not empty: nothing is changed then
 */
export const insertFormula = (
  context: Excel.RequestContext,
  formula: string,
): Promise<Pick<SelectedCells, "sheet" | "address">> =>
  inWords(
    (work) => work.insert,
    async () => {
      const { workbook } = context;
      const cell = workbook.getSelectedRange().getCell(0, 0);
      cell.load("address,formulas");
      await context.sync();
      const place = placeIn(cell.address);
      if (!isEmpty(cell)) throw notEmpty(place);
      const there = () => workbook.worksheets.getItem(place.sheet).getRange(place.address);
      // The batch that writes reads first what it writes over.
      const before = there();
      before.load("formulas");
      there().formulas = [[formula]];
      await context.sync();
      if (isEmpty(before)) return place;
      there().formulas = before.formulas;
      await context.sync();
      throw notEmpty(place);
    },
  );
