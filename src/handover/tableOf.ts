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
  paddingTop: () => 2,
  paddingBottom: () => 2,
};

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
    dontBreakRows: true,
    widths: [...widths],
    body: [
      titles.map((text) => ({ text, bold: true, color: "#ffffff", fillColor: HEAD })),
      ...rows.map((row) => [...row]),
    ],
  },
});
