import type { Cell, WriteSheet } from "hucre/xlsx";
import { rangeRef } from "hucre/xlsx";
import type { CellValue } from "../records/kind";
import { a1, columnLetters } from "../sheets/address";
import type { CellWrite } from "../sheets/cell";
import type { PlannedSheet } from "../sheets/plannedSheet";
import { fileValidation } from "./fileValidation";
import { cautionText, HEADER_ROW, lastRow, TITLE_WIDTH } from "./layout";
import { body, CAUTION, header, PURPOSE, resultRules, TITLE } from "./look";
import { setCell } from "./setCell";

/** A sheet of the plan, laid out: title, purpose, cautions, then the table. */
export function newSheet(planned: PlannedSheet, writes: readonly CellWrite[]): WriteSheet {
  const { columns, rows, sheet: name } = planned;
  const count = Math.max(rows.length, 1);
  const sheet: WriteSheet & { rows: CellValue[][]; cells: Map<string, Partial<Cell>> } = {
    name,
    rows: [],
    cells: new Map(),
  };
  setCell(sheet, 0, 0, planned.title, undefined, TITLE);
  setCell(sheet, 1, 0, planned.purpose, undefined, PURPOSE);
  setCell(
    sheet,
    2,
    0,
    cautionText(planned) || null,
    undefined,
    planned.cautions.length > 0 ? CAUTION : PURPOSE,
  );
  columns.forEach((column, at) => {
    setCell(sheet, HEADER_ROW, at, column.header, undefined, header(column));
  });
  const styles = columns.map(body);
  for (let row = 0; row < count; row++)
    columns.forEach((_column, at) => {
      setCell(sheet, HEADER_ROW + 1 + row, at, null, undefined, styles[at]);
    });
  for (const { row, column, value, formula } of writes)
    setCell(sheet, HEADER_ROW + 1 + row, column, value, formula, styles[column]);
  const width = columns.slice(0, TITLE_WIDTH).reduce((sum, column) => sum + column.width, 0);
  const last = Math.min(columns.length, TITLE_WIDTH) - 1;
  const lines = planned.cautions.reduce(
    (sum, line) => sum + Math.ceil((line.length * 1.05) / width),
    0,
  );
  const end = lastRow(rows.length);
  const result = columns.findIndex(({ role }) => role === "result");
  return {
    ...sheet,
    columns: columns.map((column) => ({ width: column.width + 2 })),
    merges: [1, 2].map((row) => ({ startRow: row, endRow: row, startCol: 0, endCol: last })),
    rowDefs: new Map([
      [0, { height: 24 }],
      [1, { height: 15 * Math.max(1, Math.ceil((planned.purpose.length * 1.1) / width)) + 2 }],
      [2, { height: lines === 0 ? 6 : 14 * lines + 4 }],
      [HEADER_ROW, { height: 32 }],
    ]),
    tables: [
      {
        name: planned.table,
        range: rangeRef(HEADER_ROW, 0, end, columns.length - 1),
        columns: columns.map((column) => ({ name: column.header })),
        style: "TableStyleLight1",
        showRowStripes: false,
      },
    ],
    dataValidations: columns.flatMap((column, at) =>
      fileValidation(column, `${a1(HEADER_ROW + 1, at)}:${a1(end, at)}`, a1(HEADER_ROW + 1, at)),
    ),
    conditionalRules:
      result < 0 ? [] : resultRules(`${a1(HEADER_ROW + 1, result)}:${a1(end, result)}`),
    freezePane: {
      rows: HEADER_ROW + 1,
      columns: columns.filter(({ role }) => role === "key").length,
    },
    pageSetup: {
      paperSize: columns.length > TITLE_WIDTH ? "a3" : "a4",
      orientation: "landscape",
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      printTitlesRow: `$${HEADER_ROW + 1}:$${HEADER_ROW + 1}`,
      printArea: `$A$1:$${columnLetters(columns.length - 1)}$${end + 1}`,
      margins: { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 },
    },
    headerFooter: { oddFooter: "&L&A&C&F&RPage &P of &N" },
    view: { showGridLines: false },
    a11y: { summary: planned.purpose, headerRow: HEADER_ROW },
  };
}
