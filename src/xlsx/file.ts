import { insertRows } from "hucre";
import {
  openXlsx,
  type RoundtripWorkbook,
  rangeRef,
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
import type { OwnLayout, TableSnapshot } from "../sheets/snapshot";
import { openFile } from "./book";
import { countFrom1900 } from "./cellValues";
import { corners } from "./corners";
import { finish } from "./correctPackage";
import { newSheet } from "./newSheet";
import { readBook, understood } from "./readBook";
import { readMemory } from "./remembered";
import { setCell } from "./setCell";

/** Opens a workbook file to be changed. The library would drop cached results that are text or true and false. */
export async function openBook(file: Uint8Array): Promise<RoundtripWorkbook> {
  const workbook = await understood(() => {
    openFile(file);
    return openXlsx(file, { readStyles: true });
  });
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
  const done = reconcile(plan, await readBook(existing));
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

export { readBook } from "./readBook";
