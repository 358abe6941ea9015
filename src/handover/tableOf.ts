import type { Content as Block, TableCell } from "pdfmake/interfaces";

const HEAD = "#24404d";
const LINE = "#9aa7ae";

/** Thin lines around every cell. */
export const LAYOUT = {
  hLineWidth: () => 0.5,
  vLineWidth: () => 0.5,
  hLineColor: () => LINE,
  vLineColor: () => LINE,
  paddingLeft: () => 3,
  paddingRight: () => 3,
  paddingTop: () => 1.5,
  paddingBottom: () => 1.5,
};

/** The cells of a table's titles. */
export const titleCells = (titles: readonly string[]): TableCell[] =>
  titles.map((text) => ({ text, bold: true, color: "#ffffff", fillColor: HEAD }));

/** A table under titles that stand on each page again. */
export const tableOf = (
  titles: readonly string[],
  rows: readonly (readonly TableCell[])[],
  widths: readonly (string | number)[] = titles.map(() => "*"),
): Block => ({
  layout: LAYOUT,
  margin: [0, 2, 0, 8],
  table: {
    headerRows: 1,
    keepWithHeaderRows: 1,
    dontBreakRows: true,
    widths: [...widths],
    body: [titleCells(titles), ...rows.map((row) => [...row])],
  },
});
