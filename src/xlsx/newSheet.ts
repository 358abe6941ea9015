import { toCol } from "@borgar/fx";
import type { Cell, WriteSheet } from "hucre/xlsx";
import { rangeRef } from "hucre/xlsx";
import { headOf } from "../look/head";
import { body, header, resultRules } from "../look/look";
import { keysOf, pageOf, widthOf } from "../look/page";
import { HEADER_HEIGHT, HEADER_ROW, lastRow } from "../look/tableLayout";
import type { CellValue } from "../records/kind";
import { a1 } from "../sheets/address";
import type { CellWrite } from "../sheets/cell";
import type { PlannedSheet } from "../sheets/plannedSheet";
import { fileValidation } from "./newValidations";
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
  const head = headOf(planned);
  head.forEach(({ text, style, from }, row) => {
    setCell(sheet, row, from, text || null, undefined, style);
  });
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
  const end = lastRow(rows.length);
  const page = pageOf(columns);
  const result = columns.findIndex(({ role }) => role === "result");
  return {
    ...sheet,
    columns: columns.map((column) => ({ width: widthOf(column) })),
    merges: head.flatMap(({ from, to }, row) =>
      from < to ? [{ startRow: row, endRow: row, startCol: from, endCol: to }] : [],
    ),
    rowDefs: new Map([
      ...head.map(({ height }, row) => [row, { height }] as const),
      [HEADER_ROW, { height: HEADER_HEIGHT }],
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
      columns: keysOf(columns),
    },
    pageSetup: {
      paperSize: page.paper,
      orientation: "landscape",
      fitToPage: true,
      fitToWidth: page.across,
      fitToHeight: 0,
      printTitlesRow: `$${HEADER_ROW + 1}:$${HEADER_ROW + 1}`,
      ...(page.repeated > 0 ? { printTitlesColumn: `$A:$${toCol(page.repeated - 1)}` } : {}),
      margins: { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 },
    },
    headerFooter: { oddFooter: "&L&A&C&F&RPage &P of &N" },
    view: { showGridLines: false },
    a11y: { summary: planned.purpose, headerRow: HEADER_ROW },
  };
}
