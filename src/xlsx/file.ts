import { EncryptedFileError, HucreError, insertRows } from "hucre";
import {
  openXlsx,
  type RoundtripWorkbook,
  rangeRef,
  readXlsx,
  type Sheet,
  saveXlsx,
  writeXlsx,
} from "hucre/xlsx";
import { body, FONT } from "../look/look";
import { BookError } from "../sheets/bookError";
import type { CellWrite } from "../sheets/cell";
import { columnFormulas } from "../sheets/columnFormulas";
import { type Plan, planFor } from "../sheets/plan";
import type { PlannedSheet } from "../sheets/plannedSheet";
import { type Reconciled, reconcile, type TableChange } from "../sheets/reconcile";
import type { Remembered } from "../sheets/remembered";
import type { OwnLayout, Snapshot, TableSnapshot } from "../sheets/snapshot";
import { countFrom1900 } from "./cellValues";
import { finish, readMemory, readRemembered } from "./correctPackage";
import { newSheet } from "./newSheet";
import { readParts, type SheetsPart, storedSheets } from "./readPart";
import { setCell } from "./setCell";
import { sheetSnapshot } from "./sheetSnapshot";
import { corners } from "./storedSheet";

/** A file is read in parts of about so many bytes, each let go before the next. */
const PART = 500_000;

/**
 * What a workbook file holds.
 *
 * @param read reads its parts
 * @throws {BookError} that says what the file is, where it is not a readable workbook
 */
export async function readBook(file: Uint8Array, read = readParts): Promise<Snapshot> {
  const parts = await understood(file, async () => read(file, await partsOf(file)));
  return {
    sheets: parts.flat().map(sheetSnapshot),
    lineup: readMemory(file)?.lineup,
    ...readRemembered(file),
  };
}

/** The sheets of a file, in as many parts as its size asks for. */
async function partsOf(file: Uint8Array): Promise<SheetsPart[]> {
  const count = Math.ceil(file.length / PART);
  if (count <= 1) return [{}];
  const names: string[] = [];
  const name = (sheet: { name: string }) => {
    names.push(sheet.name);
    return false;
  };
  await readXlsx(file, { sheets: name });
  const each = Math.ceil(names.length / count);
  return Array.from({ length: Math.ceil(names.length / each) }, (_, part) => ({
    sheets: names.slice(part * each, (part + 1) * each),
  }));
}

/** Runs a read and turns what the library says of a bad file into our own words. */
async function understood<T>(file: Uint8Array, read: () => Promise<T>): Promise<T> {
  if (file.length === 0) throw new BookError("is empty; give an .xlsx workbook");
  try {
    return await read();
  } catch (error) {
    if (error instanceof BookError) throw error;
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
export async function openBook(file: Uint8Array): Promise<RoundtripWorkbook> {
  const workbook = await understood(file, () => openXlsx(file, { readStyles: true }));
  for (const { cells } of workbook.sheets)
    for (const cell of cells?.values() ?? [])
      if (cell.formula !== undefined && cell.formulaResult === undefined)
        cell.formulaResult = cell.value;
  countFrom1900(workbook);
  return workbook;
}

/** A workbook file built, and what was done to make it. */
export interface Built {
  readonly file: Uint8Array;
  readonly done: Reconciled;
}

/** Writes the record workbook of a plan: a new one, or onto one that exists, keeping what people put there. */
export async function writeBook(plan: Plan, existing?: Uint8Array): Promise<Built> {
  if (!existing) {
    const done = reconcile(plan);
    const sheets = done.create.map(({ planned, writes }) => newSheet(planned, writes));
    const file = await writeXlsx({
      sheets,
      properties: { title: `Test records, ${plan.lineup.project.name}`, creator: "Gearproof" },
      defaultFont: { name: FONT, size: 10 },
    });
    return { file: finish(file, sheets, { lineup: plan.lineup }, columnFormulas(plan)), done };
  }
  const workbook = await openBook(existing);
  const done = reconcile(plan, { sheets: storedSheets(workbook).map(sheetSnapshot) });
  for (const change of done.change) applyChange(workbook, change, planned(plan, change));
  for (const { planned, writes } of done.create) addSheet(workbook, planned, writes);
  const file = await saveXlsx(workbook);
  return {
    file: finish(file, workbook.sheets, { lineup: plan.lineup }, columnFormulas(plan)),
    done,
  };
}

const planned = (plan: Plan, { table }: TableChange) =>
  plan.sheets.find(
    (sheet) =>
      sheet.table === table.name ||
      sheet.columns.every(({ header }) => table.headers.includes(header)),
  );

/** What is written besides cells: sheets that the workbook lacks, and what it shall remember. */
export interface WrittenBesides {
  readonly create?: Reconciled["create"];
  readonly remembered?: Remembered;
}

/** Writes single cells of existing tables into a workbook file, and rows at their foot; everything else stays. */
export async function writeCells(
  existing: Uint8Array,
  changes: readonly { table: TableSnapshot; writes: readonly CellWrite[]; added?: number }[],
  { create = [], remembered }: WrittenBesides = {},
): Promise<Uint8Array> {
  const workbook = await openBook(existing);
  for (const { table, writes, added = 0 } of changes)
    applyChange(workbook, { table, writes, added, aside: [] }, undefined);
  for (const { planned, writes } of create) addSheet(workbook, planned, writes);
  const memory = readMemory(existing);
  const formulas = memory ? columnFormulas(planFor(memory.lineup)) : new Map();
  return finish(await saveXlsx(workbook), workbook.sheets, memory, formulas, remembered);
}

function addSheet(
  workbook: RoundtripWorkbook,
  planned: PlannedSheet,
  writes: readonly CellWrite[],
) {
  if (workbook.sheets.some(({ name }) => name.toLowerCase() === planned.sheet.toLowerCase()))
    throw new BookError(
      `has a sheet "${planned.sheet}" of its own, where the table ${planned.table} should go; rename that sheet and try again`,
    );
  workbook.sheets.push(newSheet(planned, writes) as Sheet);
}

function applyChange(
  workbook: RoundtripWorkbook,
  { table, added, writes }: TableChange,
  planned: PlannedSheet | undefined,
) {
  const sheet = workbook.sheets.find(({ name }) => name === table.sheet);
  if (table.ownLayout) {
    if (sheet) writeOwnLayout(sheet, table.ownLayout, writes);
    return;
  }
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

/** Writes into somebody's own layout: values alone, each in its cell's own look. */
function writeOwnLayout(sheet: Sheet, { holds, written }: OwnLayout, writes: readonly CellWrite[]) {
  sheet.cells ??= new Map();
  for (const { row, column, value } of writes) {
    const at = holds(row, column);
    if (!at)
      throw new BookError(`has no cell on the sheet "${sheet.name}" for ${JSON.stringify(value)}`);
    const style = sheet.cells.get(`${at.row},${at.column}`)?.style;
    setCell(sheet, at.row, at.column, written(row, column, value), undefined, style);
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
