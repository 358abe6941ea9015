import { headOf } from "../look/head";
import { body, header, resultRules } from "../look/look";
import { keysOf, pageOf, widthOf } from "../look/page";
import { HEADER_HEIGHT, HEADER_ROW, lastRow } from "../look/tableLayout";
import { validationOf, validationTitle } from "../look/validation";
import { a1 } from "../sheets/cells/address";
import type { CellWrite } from "../sheets/cells/cell";
import { INSTRUMENT_SHEET } from "../sheets/ours/instrumentSheet";
import type { PlannedSheet } from "../sheets/plan/plannedSheet";
import type { DraftCell, DraftValidation, SheetDraft } from "./write/sheetDraft";

/**
 * A sheet of the plan, laid out: title, purpose, cautions, then the table.
 *
 * @param formulas by header, what the table gives to rows that are added in a spreadsheet
 * @param instruments name of the sheet that lists the instruments
 */
export function draftSheet(
  planned: PlannedSheet,
  writes: readonly CellWrite[],
  formulas?: ReadonlyMap<string, string>,
  instruments = INSTRUMENT_SHEET,
): SheetDraft {
  const { columns, rows: records, sheet: name, table } = planned;
  const count = Math.max(records.length, 1);
  const head = headOf(planned);
  const end = lastRow(records.length);
  const page = pageOf(columns, planned.papers);
  const result = columns.findIndex(({ role }) => role === "result");
  return {
    name,
    rows: { [Symbol.iterator]: () => rowsOf(planned, writes, count) },
    widths: columns.map(widthOf),
    heights: new Map([
      ...head.map(({ height }, row) => [row, height] as const),
      [HEADER_ROW, HEADER_HEIGHT],
    ]),
    merges: head.flatMap(({ from, to }, row) =>
      from < to ? [{ top: row, left: from, bottom: row, right: to }] : [],
    ),
    tables: [
      {
        name: table,
        area: { top: HEADER_ROW, left: 0, bottom: end, right: columns.length - 1 },
        headers: columns.map(({ header }) => header),
        formulas,
      },
    ],
    validations: columns.flatMap((column, at): DraftValidation[] => {
      const first = a1(HEADER_ROW + 1, at);
      const validation = validationOf(column, first, instruments);
      if (!validation) return [];
      const { header, help } = column;
      return [
        { validation, range: `${first}:${a1(end, at)}`, title: validationTitle(header), help },
      ];
    }),
    rules: result < 0 ? [] : resultRules(`${a1(HEADER_ROW + 1, result)}:${a1(end, result)}`),
    frozen: { rows: HEADER_ROW + 1, columns: keysOf(columns) },
    gridLines: false,
    page: {
      paper: page.paper,
      across: page.across,
      footer: "&L&A&C&F&RPage &P of &N",
      titleRow: HEADER_ROW,
      titleColumns: page.repeated,
    },
  };
}

/** The rows of a sheet in their order: what stands above the table, its titles, and its body. */
function* rowsOf(
  planned: PlannedSheet,
  writes: readonly CellWrite[],
  count: number,
): Generator<readonly [number, ReadonlyMap<number, DraftCell>]> {
  const { columns } = planned;
  for (const [row, { text, style, from }] of headOf(planned).entries())
    yield [row, new Map([[from, { value: text || null, style }]])];
  yield [
    HEADER_ROW,
    new Map(
      columns.map((column, at) => [at, { value: column.header, style: header(column) }] as const),
    ),
  ];
  const styles = columns.map(body);
  const blank = styles.map((style, at) => [at, { value: null, style }] as const);
  const written = writes.toSorted((one, other) => one.row - other.row);
  let next = 0;
  for (let row = 0; row < count; row++) {
    const cells = new Map<number, DraftCell>(blank);
    for (let write = written[next]; write?.row === row; write = written[++next]) {
      const { column, value, formula } = write;
      cells.set(column, { value, style: styles[column], formula });
    }
    yield [HEADER_ROW + 1 + row, cells];
  }
}
