import {
  type Cell,
  type CellStyle,
  type DataValidation,
  EncryptedFileError,
  HucreError,
  insertRows,
  openXlsx,
  type RoundtripWorkbook,
  readXlsx,
  type Sheet,
  saveXlsx,
  type Workbook,
  type WriteSheet,
  writeXlsx,
} from "hucre";
import { parseCellRef, rangeRef } from "hucre/xlsx";
import type { CellValue, Column } from "../records/kind";
import { a1, columnLetters } from "../sheets/address";
import { toSerial } from "../sheets/dates";
import { tableReference } from "../sheets/formula";
import { type Plan, planFor } from "../sheets/plan";
import type { PlannedSheet } from "../sheets/plannedSheet";
import { type CellWrite, type Reconciled, reconcile, type TableChange } from "../sheets/reconcile";
import type { SheetSnapshot, Snapshot, TableSnapshot } from "../sheets/snapshot";
import { BookError } from "./bookError";
import { finish, readMemory } from "./finish";
import { body, CAUTION, FONT, header, PURPOSE, resultRules, TITLE } from "./look";

/** Sheet row of the table header, from 0: title, purpose and cautions stand above it. */
const HEADER_ROW = 3;
/** Columns that the title's lines are merged over. */
const TITLE_WIDTH = 12;

/**
 * What a workbook file holds.
 *
 * @throws {BookError} that says what the file is, where it is not a readable workbook
 */
export async function readBook(file: Uint8Array): Promise<Snapshot> {
  const workbook = await understood(file, () => readXlsx(file));
  return { ...snapshotOf(workbook), lineup: readMemory(file)?.lineup };
}

/** Runs a read and turns what the library says of a bad file into our own words. */
async function understood<T>(file: Uint8Array, read: () => Promise<T>): Promise<T> {
  if (file.length === 0) throw new BookError("is empty; give an .xlsx workbook");
  try {
    return await read();
  } catch (error) {
    if (error instanceof EncryptedFileError)
      throw new BookError(
        "is encrypted or an old .xls file; open it in a spreadsheet, take the password off and save it as .xlsx",
      );
    if (file[0] !== 0x50 || file[1] !== 0x4b)
      throw new BookError("is not a workbook; give an .xlsx file as a spreadsheet saves it");
    const why =
      error instanceof HucreError || error instanceof Error ? error.message : String(error);
    throw new BookError(
      `is damaged or not a workbook (${why}); open it in a spreadsheet, let that repair it, and save it again as .xlsx`,
    );
  }
}

/** Opens a workbook file to be changed. The library would drop cached results that are text or true and false. */
async function openBook(file: Uint8Array): Promise<RoundtripWorkbook> {
  const workbook = await understood(file, () => openXlsx(file, { readStyles: true }));
  for (const { cells } of workbook.sheets)
    for (const cell of cells?.values() ?? [])
      if (cell.formula !== undefined && cell.formulaResult === undefined)
        cell.formulaResult = cell.value;
  return workbook;
}

function snapshotOf(workbook: Workbook): Snapshot {
  return { sheets: workbook.sheets.map(sheetSnapshot) };
}

function sheetSnapshot(sheet: Sheet): SheetSnapshot {
  const tables = (sheet.tables ?? []).flatMap((table): TableSnapshot[] => {
    if (!table.range) return [];
    const { top, left, bottom } = corners(table.range);
    const last = table.showTotalRow ? bottom - 1 : bottom;
    return [
      {
        name: table.displayName ?? table.name,
        sheet: sheet.name,
        top,
        left,
        headers: table.columns.map(({ name }) => name),
        rowCount: last - top,
        cell: (row, column) => plain(sheet.rows[top + 1 + row]?.[left + column]),
        formula: (row, column) => sheet.cells?.get(`${top + 1 + row},${left + column}`)?.formula,
      },
    ];
  });
  return { name: sheet.name, tables };
}

function corners(range: string) {
  const [first = "A1", second = first] = range.split(":");
  const start = parseCellRef(first);
  const end = parseCellRef(second);
  return { top: start.row, left: start.col, bottom: end.row, right: end.col };
}

const plain = (value: Cell["value"] | undefined): CellValue =>
  value === undefined ? null : value instanceof Date ? toSerial(value) : value;

/** A workbook file built, and what was done to make it. */
export interface Built {
  readonly file: Uint8Array;
  readonly done: Reconciled;
}

/** Writes the record workbook of a plan: a new one, or onto one that exists, keeping what people put there. */
export async function writeBook(plan: Plan, existing?: Uint8Array): Promise<Built> {
  if (!existing) {
    const done = reconcile(plan);
    const file = await writeXlsx({
      sheets: done.create.map(({ planned, writes }) => newSheet(planned, writes)),
      properties: { title: `Test records, ${plan.lineup.project.name}`, creator: "Gearproof" },
      defaultFont: { name: FONT, size: 10 },
    });
    return { file: finish(file, { lineup: plan.lineup }, columnFormulas(plan)), done };
  }
  const workbook = await openBook(existing);
  const done = reconcile(plan, snapshotOf(workbook));
  for (const change of done.change) applyChange(workbook, change, planned(plan, change));
  for (const { planned, writes } of done.create) {
    if (workbook.sheets.some(({ name }) => name.toLowerCase() === planned.sheet.toLowerCase()))
      throw new BookError(
        `has a sheet "${planned.sheet}" of its own, where the table ${planned.table} should go; rename that sheet and build again`,
      );
    workbook.sheets.push(newSheet(planned, writes) as Sheet);
  }
  const file = await saveXlsx(workbook);
  return { file: finish(file, { lineup: plan.lineup }, columnFormulas(plan)), done };
}

const planned = (plan: Plan, { table }: TableChange) =>
  plan.sheets.find(
    (sheet) =>
      sheet.table === table.name ||
      sheet.columns.every(({ header }) => table.headers.includes(header)),
  );

/** Writes single cells of existing tables into a workbook file; everything else stays. */
export async function writeCells(
  existing: Uint8Array,
  changes: readonly { table: TableSnapshot; writes: readonly CellWrite[] }[],
): Promise<Uint8Array> {
  const workbook = await openBook(existing);
  for (const { table, writes } of changes)
    applyChange(workbook, { table, writes, added: 0, aside: [] }, undefined);
  const memory = readMemory(existing);
  const formulas = memory ? columnFormulas(planFor(memory.lineup)) : new Map();
  return finish(await saveXlsx(workbook), memory, formulas);
}

function applyChange(
  workbook: RoundtripWorkbook,
  { table, added, writes }: TableChange,
  planned: PlannedSheet | undefined,
) {
  const sheet = workbook.sheets.find(({ name }) => name === table.sheet);
  const definition = sheet?.tables?.find(
    ({ displayName, name }) => (displayName ?? name) === table.name,
  );
  if (!sheet || !definition?.range) throw new BookError(`has lost its table ${table.name}`);
  const bottom = table.top + table.rowCount;
  if (added > 0) {
    makeRoom(sheet, table, bottom, added);
    const { top, left, right } = corners(definition.range);
    definition.range = rangeRef(top, left, bottom + added, right);
    stretch(sheet, bottom, added);
  }
  sheet.cells ??= new Map();
  for (const { row, column, value, formula } of writes) {
    const at = { row: table.top + 1 + row, column: table.left + column };
    const cells = sheet.cells;
    const above = cells.get(`${bottom},${at.column}`);
    const style =
      cells.get(`${at.row},${at.column}`)?.style ??
      above?.style ??
      (planned ? bodyStyle(planned, table.headers[column]) : undefined);
    setCell(sheet, at.row, at.column, value, formula, style);
  }
}

const bodyStyle = (planned: PlannedSheet, name: string | undefined) => {
  const column = planned.columns.find(({ header }) => header === name);
  return column && body(column);
};

/** Moves what stands below a table down, where it would be in the way of added rows. */
function makeRoom(sheet: Sheet, table: TableSnapshot, bottom: number, added: number) {
  const right = table.left + table.headers.length - 1;
  const occupied = sheet.rows
    .slice(bottom + 1, bottom + 1 + added)
    .some((row) => row.slice(table.left, right + 1).some((cell) => cell !== null && cell !== ""));
  if (occupied) insertRows(sheet, bottom + 1, added);
}

/** Validations and conditional formats that reach the table's last row go on over the added rows. */
function stretch(sheet: Sheet, bottom: number, added: number) {
  for (const ruled of [...(sheet.dataValidations ?? []), ...(sheet.conditionalRules ?? [])]) {
    if (ruled.range.includes(" ")) continue;
    const { top, left, bottom: last, right } = corners(ruled.range);
    if (last === bottom) ruled.range = rangeRef(top, left, last + added, right);
  }
}

function setCell(
  sheet: {
    rows?: (string | number | boolean | Date | null)[][];
    cells?: Map<string, Partial<Cell>>;
  },
  row: number,
  column: number,
  value: CellValue,
  formula: string | undefined,
  style: CellStyle | undefined,
) {
  const rows = sheet.rows ?? [];
  while (rows.length <= row) rows.push([]);
  const cells = rows[row] as CellValue[];
  while (cells.length <= column) cells.push(null);
  cells[column] = value;
  const typed = (
    value === null
      ? formula === undefined
        ? { value: null, type: "empty" }
        : { value: "", type: "formula", formula, formulaResult: "" }
      : formula === undefined
        ? { value, type: typeof value }
        : { value, type: "formula", formula, formulaResult: value }
  ) as Partial<Cell>;
  sheet.cells?.set(`${row},${column}`, style ? { ...typed, style } : typed);
}

/** A sheet of the plan, laid out: title, purpose, cautions, then the table. */
function newSheet(planned: PlannedSheet, writes: readonly CellWrite[]): WriteSheet {
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
    planned.cautions.map((line) => `• ${line}`).join("\n") || null,
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
  const end = HEADER_ROW + count;
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
      validation(column, `${a1(HEADER_ROW + 1, at)}:${a1(end, at)}`, a1(HEADER_ROW + 1, at)),
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

/** What an entry column accepts, as a validation on its range. It warns; nothing written is refused. */
function validation(column: Column, range: string, first: string): DataValidation[] {
  const { accepts, header, help } = column;
  if (!accepts) return [];
  const common = {
    range,
    allowBlank: true,
    showErrorMessage: true,
    errorStyle: "warning" as const,
    errorTitle: header,
    ...(help ? { showInputMessage: true, inputTitle: header, inputMessage: help } : {}),
  };
  switch (accepts.type) {
    case "number":
      return [
        {
          ...common,
          type: "decimal",
          operator: "between",
          formula1: String(accepts.least ?? -1e9),
          formula2: String(accepts.most ?? 1e9),
          errorMessage: `A number from ${accepts.least ?? "any"} to ${accepts.most ?? "any"} is expected here.`,
        },
      ];
    case "reading":
      return [
        {
          ...common,
          type: "custom",
          formula1: `OR(ISTEXT(${first}),AND(ISNUMBER(${first}),${first}>=0))`,
          errorMessage: 'A number of at least 0, or a reading as written with its unit ("> 2 TΩ").',
        },
      ];
    case "date":
      return [
        {
          ...common,
          type: "date",
          operator: "between",
          formula1: "36526",
          formula2: "73050",
          errorMessage: "A date is expected here, as 2026-11-25.",
        },
      ];
    case "list":
      return [
        {
          ...common,
          type: "list",
          values: [...accepts.values],
          errorMessage: `One of: ${accepts.values.join(", ")}.`,
        },
      ];
    case "text":
      return column.id === "instrument"
        ? [
            {
              ...common,
              type: "list",
              formula1: `Instruments!$A$${HEADER_ROW + 2}:$A$${HEADER_ROW + 201}`,
              errorMessage: "This Id is not in the table of instruments.",
            },
          ]
        : [];
  }
}

/** Formulas that a table gives to rows added in a spreadsheet, by table name and header. */
export function columnFormulas(plan: Plan): Map<string, Map<string, string>> {
  return new Map(
    plan.sheets.map(({ table, columns }) => {
      const ref = tableReference(table, columns);
      return [
        table,
        new Map(
          columns.flatMap(({ header, formula }): [string, string][] =>
            formula ? [[header, formula(ref, plan.lineup)]] : [],
          ),
        ),
      ];
    }),
  );
}
