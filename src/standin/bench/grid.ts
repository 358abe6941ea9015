import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import enUS from "@univerjs/preset-sheets-core/locales/en-US";
import { createUniver, type FUniver, LocaleType, mergeLocales } from "@univerjs/presets";
import "@univerjs/preset-sheets-core/lib/index.css";
import type { CellValue } from "../../records/kind";
import type { Area } from "../../sheets/area";
import { boxAt, putBox, type Sheet, type StandInBook, tableAt } from "../book";
import { entered } from "../entered";
import { gridFormula } from "./gridFormula";
import { gridStyles, overCells } from "./gridLook";
import { sheetData } from "./sheetData";

/** The spreadsheet grid of the bench: shows a workbook of the stand-in, computes it, and takes what is typed. */
export interface BenchGrid {
  /** Shows the workbook as it is now, and computes its formulas. */
  show(book: StandInBook): void;
  /** Settles when the last computation has been taken over into the workbook. */
  readonly idle: Promise<void>;
  select(sheet: string, row: number, column: number): void;
  register(name: string, implementation: (...args: unknown[]) => unknown): void;
  /** For tests: types into a cell as a person would. */
  type(sheet: string, address: string, value: string | number): void;
  /** For tests: what a cell shows. */
  read(sheet: string, address: string): CellValue;
  active(): string;
}

/** Cells of a sheet that a person edited or selected. */
export interface GridCells {
  readonly sheet: string;
  readonly area: Area;
}

/** So long a computation is waited for, ms. */
const LONGEST = 20_000;

/** The grid's own mode in which a workbook that is shown is not computed before it is asked to be. */
const NOT_BY_ITSELF = 2;

/** What the grid tells of a person's doings. */
interface Told {
  /** What was edited, once it has been computed. */
  readonly edited: (cells: readonly GridCells[]) => void;
  readonly selected: (cells: GridCells) => void;
}

/** The grid with the workbook that it shows. */
interface Shown {
  readonly univer: FUniver;
  book: StandInBook | undefined;
  /** How many changes of the grid are ours just now, so that they are not taken for a person's. */
  ours: number;
  idle: Promise<void>;
}

export function makeGrid(container: string, told: Told): BenchGrid {
  const { univerAPI: univer } = createUniver({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: mergeLocales(enUS) },
    presets: [
      UniverSheetsCorePreset({
        container,
        formula: { initialFormulaComputing: NOT_BY_ITSELF },
      }),
    ],
  });
  const shown: Shown = { univer, book: undefined, ours: 0, idle: Promise.resolve() };
  /** The grid takes functions only once it has a workbook. */
  const waiting: [string, (...args: unknown[]) => unknown][] = [];
  const register = (name: string, implementation: (...args: unknown[]) => unknown) =>
    univer.getFormula().registerFunction(name, implementation as never, name);
  const sheetNamed = (name: string) => univer.getActiveWorkbook()?.getSheetByName(name);

  univer.addEvent(univer.Event.SheetValueChanged, ({ effectedRanges }) =>
    takeEdit(shown, effectedRanges, told),
  );
  univer.addEvent(univer.Event.SelectionChanged, ({ worksheet, selections }) => {
    const [first] = selections;
    if (shown.ours > 0 || !shown.book || !first) return;
    const { startRow, startColumn, endRow, endColumn } = first;
    told.selected({
      sheet: worksheet.getSheetName(),
      area: { top: startRow, left: startColumn, bottom: endRow, right: endColumn },
    });
  });

  return {
    get idle() {
      return shown.idle;
    },
    show: (book) => {
      showBook(shown, book, () => {
        for (const [name, implementation] of waiting.splice(0)) register(name, implementation);
      });
    },
    select: (name, row, column) => goTo(univer, name, row, column),
    register: (name, implementation) => {
      if (univer.getActiveWorkbook()) register(name, implementation);
      else waiting.push([name, implementation]);
    },
    type: (name, address, value) => {
      sheetNamed(name)?.getRange(address).setValue(value);
    },
    read: (name, address) =>
      (sheetNamed(name)?.getRange(address).getRawValue() ?? null) as CellValue,
    active: () => {
      const workbook = univer.getActiveWorkbook();
      const range = workbook?.getActiveRange();
      return range ? `${workbook?.getActiveSheet().getSheetName()}!${range.getA1Notation()}` : "";
    },
  };
}

/** Shows a workbook in the place of the one before, at the same cell where both have its sheet. */
function showBook(shown: Shown, book: StandInBook, ready: () => void) {
  const { univer } = shown;
  shown.book = book;
  shown.ours++;
  const before = univer.getActiveWorkbook();
  const active = before?.getActiveSheet()?.getSheetName();
  const cell = before?.getActiveRange()?.getRange();
  const sheets = book.sheets.map((sheet) => sheetData(book, sheet));
  if (before) univer.disposeUnit(before.getId());
  univer.createWorkbook({
    id: `book-${Date.now()}-${Math.random()}`,
    name: "Bench",
    sheetOrder: sheets.map(({ id }) => id),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
  });
  ready();
  if (active) goTo(univer, active, cell?.startRow, cell?.startColumn);
  shown.idle = computed(shown).finally(() => {
    for (const sheet of book.sheets) restyle(univer, sheet);
    shown.ours--;
  });
}

/** Shows a sheet, and a cell of it with some rows and columns before it. */
function goTo(univer: FUniver, name: string, row?: number, column?: number) {
  const workbook = univer.getActiveWorkbook();
  const sheet = workbook?.getSheetByName(name);
  if (!workbook || !sheet) return;
  workbook.setActiveSheet(sheet);
  if (row === undefined || column === undefined) return;
  sheet.scrollToCell(Math.max(0, row - 6), Math.max(0, column - 3));
  workbook.setActiveRange(sheet.getRange(row, column));
}

/** Computes the workbook that is shown, and takes the results over into ours. */
async function computed(shown: Shown) {
  const formula = shown.univer.getFormula();
  let hasStarted = false;
  const start = formula.calculationStart(() => {
    hasStarted = true;
  });
  const deadline = performance.now() + LONGEST;
  const done = formula.onCalculationResultApplied(LONGEST);
  formula.executeCalculation();
  await done.catch(() => {});
  // On a busy page the grid may give up before the computation has even started.
  while (!hasStarted && performance.now() < deadline)
    await formula.onCalculationResultApplied(LONGEST).catch(() => {});
  start.dispose();
  for (const sheet of shown.book?.sheets ?? []) takeResults(shown.univer, sheet);
}

/** Takes what the grid computed on a sheet over into the workbook. */
function takeResults(univer: FUniver, sheet: Sheet) {
  const height = sheet.cells.length;
  const width = Math.max(0, ...sheet.cells.map((row) => row?.length ?? 0));
  if (height === 0 || width === 0) return;
  const values = univer
    .getActiveWorkbook()
    ?.getSheetByName(sheet.name)
    ?.getRange(0, 0, height, width)
    .getRawValues();
  for (const [row, boxes = []] of sheet.cells.entries())
    for (const [column, box] of boxes.entries())
      if (box?.formula !== undefined) {
        const value = (values?.[row]?.[column] ?? null) as CellValue;
        box.value = value === null ? "" : plain(value, box.formula);
      }
}

/** Draws the colours of the conditional formats of a sheet anew. */
function restyle(univer: FUniver, sheet: Sheet) {
  const worksheet = univer.getActiveWorkbook()?.getSheetByName(sheet.name);
  const styles = gridStyles(sheet);
  const end = { row: sheet.cells.length - 1, column: Number.POSITIVE_INFINITY };
  for (const area of sheet.formats.flatMap(({ areas }) => areas))
    overCells(area, end, (row, column) => {
      const style = styles.get(row)?.get(column);
      const range = worksheet?.getRange(row, column);
      if (style?.bg) range?.setBackgroundColor(style.bg.rgb);
      if (style?.cl) range?.setFontColor(style.cl.rgb);
    });
}

type Ranges = Parameters<
  Parameters<typeof FUniver.prototype.addEvent<"SheetValueChanged">>[1]
>[0]["effectedRanges"];

/** Takes what a person typed over into the workbook; told once it has been computed. */
function takeEdit(shown: Shown, ranges: Ranges, told: Told) {
  const { book, univer } = shown;
  if (shown.ours > 0 || !book) return;
  const changed = ranges.flatMap((range) => {
    const sheet = book.sheets.find(({ name }) => name === range.getSheetName());
    return sheet ? takeRange(book, sheet, range) : [];
  });
  if (changed.length === 0) return;
  // The grid computes what depends on it; the workbook need not be shown anew for that.
  book.dirty = false;
  shown.idle = computed(shown).then(() => {
    shown.ours++;
    for (const sheet of book.sheets) restyle(univer, sheet);
    shown.ours--;
    told.edited(changed);
  });
}

function takeRange(book: StandInBook, sheet: Sheet, range: Ranges[number]): GridCells[] {
  const { startRow, startColumn, endRow, endColumn } = range.getRange();
  const values = range.getRawValues();
  const formulas = range.getFormulas();
  const changed: GridCells[] = [];
  overCells(
    { top: startRow, left: startColumn, bottom: endRow, right: endColumn },
    { row: endRow, column: endColumn },
    (row, column) => {
      const formula = formulas[row - startRow]?.[column - startColumn];
      const value = (values[row - startRow]?.[column - startColumn] ?? "") as CellValue;
      if (!takeCell(book, sheet, row, column, value ?? "", formula)) return;
      const area = { top: row, left: column, bottom: row, right: column };
      changed.push({ sheet: sheet.name, area });
    },
  );
  return changed;
}

/** Takes a cell of the grid over; false where it is what the workbook has. */
function takeCell(
  book: StandInBook,
  sheet: Sheet,
  row: number,
  column: number,
  value: CellValue,
  formula: string | undefined,
): boolean {
  const before = boxAt(sheet, row, column);
  const was = before?.formula;
  if (formula && was !== undefined && gridFormula(book, sheet, row, was) === formula) return false;
  const box = formula
    ? { value, formula: formula.replace(/^=/, "") }
    : entered(value, tableAt(sheet, row, column)?.name);
  if (box?.value === before?.value && box?.formula === was) return false;
  putBox(book, sheet, row, column, box);
  return true;
}

/** The grid holds true and false as 1 and 0; the formulas that give them say so. */
const plain = (value: CellValue, formula: string): CellValue =>
  (value === 0 || value === 1) && /^(AND|OR|NOT|ISNUMBER|TRUE|FALSE)\b/i.test(formula)
    ? value === 1
    : value;

export type { FUniver };
