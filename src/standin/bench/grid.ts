import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import enUS from "@univerjs/preset-sheets-core/locales/en-US";
import { createUniver, type FUniver, LocaleType, mergeLocales } from "@univerjs/presets";
import "@univerjs/preset-sheets-core/lib/index.css";
import type { CellValue } from "../../records/kind";
import type { Area } from "../../sheets/cells/area";
import { boxAt, putBox, type Sheet, type StandInBook, tableAt } from "../book";
import { entered } from "../entered";
import { type CellChange, cellChange, cellChanges, isSameFrame } from "./gridChanges";
import { gridStyles, overCells } from "./gridLook";
import {
  type GridCell,
  type GridLines,
  gridCell,
  putCell,
  type SheetData,
  sheetData,
} from "./sheetData";

/** The spreadsheet grid of the bench: shows a workbook of the stand-in, computes it, and takes what is typed. */
export interface BenchGrid {
  /** Shows another workbook as it was stored, with the results that are stored in it. */
  open(book: StandInBook): void;
  /** Shows what has changed in the workbook, and computes what follows from it. */
  show(): void;
  /** Settles when the last computation has been taken over into the workbook. */
  readonly idle: Promise<void>;
  select(sheet: string, row: number, column: number): void;
  register(name: string, implementation: (...args: unknown[]) => unknown): void;
  /** For tests: types into a cell as a person would. */
  type(sheet: string, address: string, value: string | number): void;
  /** For tests: pastes a block of values as a person would, its first cell at an address. */
  paste(sheet: string, address: string, values: readonly (readonly (string | number)[])[]): void;
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

/** The grid's own command by which anything gets into cells. */
const SET_VALUES = "sheet.mutation.set-range-values";

/** What the grid tells of a person's doings. */
interface Told {
  /** What was edited, once what follows from it has been computed. */
  readonly edited: (cells: readonly GridCells[]) => void;
  readonly selected: (cells: GridCells) => void;
}

/** The grid with the workbook that it shows. */
interface Shown {
  readonly univer: FUniver;
  readonly told: Told;
  book: StandInBook | undefined;
  /** What the grid has of each sheet, by the sheet's id. */
  readonly sheets: Map<string, SheetData>;
  /** True while the grid is told something, so that this is not taken for a person's doing. */
  isTold: boolean;
  /** True from a change until the grid has begun to compute what follows from it. */
  isDue: boolean;
  /** True while the grid puts into cells what it has computed. */
  isResult: boolean;
  /** What a person edited and the pane has not been told yet. */
  readonly edits: GridCells[];
  /** Sheets on which something has come to another result, so that they may look otherwise. */
  readonly computed: Set<Sheet>;
  idle: Promise<void> | undefined;
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
  const shown: Shown = {
    univer,
    told,
    book: undefined,
    sheets: new Map(),
    isTold: false,
    isDue: false,
    isResult: false,
    edits: [],
    computed: new Set(),
    idle: undefined,
  };
  /** The grid takes functions only once it has a workbook. */
  const waiting: [string, (...args: unknown[]) => unknown][] = [];
  const register = (name: string, implementation: (...args: unknown[]) => unknown) =>
    univer.getFormula().registerFunction(name, implementation as never, name);
  const sheetNamed = (name: string) => univer.getActiveWorkbook()?.getSheetByName(name);
  follow(shown);

  return {
    get idle() {
      return shown.idle ?? Promise.resolve();
    },
    open: (book) => {
      shown.book = book;
      create(shown, book);
      for (const [name, implementation] of waiting.splice(0)) register(name, implementation);
    },
    show: () => show(shown),
    select: (name, row, column) => {
      // The grid keeps the first selection after a workbook is opened to itself.
      tell(shown, () => goTo(univer, name, row, column));
      told.selected({
        sheet: name,
        area: { top: row, left: column, bottom: row, right: column },
      });
    },
    register: (name, implementation) => {
      if (univer.getActiveWorkbook()) register(name, implementation);
      else waiting.push([name, implementation]);
    },
    type: (name, address, value) => {
      sheetNamed(name)?.getRange(address).setValue(value);
    },
    paste: (name, address, values) => {
      const first = sheetNamed(name)?.getRange(address).getRange();
      if (!first) return;
      sheetNamed(name)
        ?.getRange(first.startRow, first.startColumn, values.length, values[0]?.length ?? 0)
        .setValues(values.map((row) => [...row]));
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

/** Follows what a person does in the grid, and what the grid computes. */
function follow(shown: Shown) {
  const { univer, told } = shown;
  univer.getFormula().calculationStart(() => {
    shown.isDue = false;
  });
  univer.addEvent(univer.Event.BeforeCommandExecute, ({ id, options }) => {
    if (id === SET_VALUES) shown.isResult = options?.applyFormulaCalculationResult === true;
  });
  univer.addEvent(univer.Event.SheetValueChanged, ({ effectedRanges }) => {
    if (shown.isTold) return;
    const edits = effectedRanges.flatMap((range) => takeRange(shown, range));
    if (edits.length === 0) return;
    shown.edits.push(...edits);
    compute(shown);
  });
  univer.addEvent(univer.Event.SelectionChanged, ({ worksheet, selections }) => {
    const [first] = selections;
    if (shown.isTold || !first) return;
    const { startRow, startColumn, endRow, endColumn } = first;
    told.selected({
      sheet: worksheet.getSheetName(),
      area: { top: startRow, left: startColumn, bottom: endRow, right: endColumn },
    });
  });
}

/** Tells the grid something. */
function tell(shown: Shown, what: () => void) {
  shown.isTold = true;
  what();
  shown.isTold = false;
}

/** Puts a workbook in the place of the one before, at the same cell where both have its sheet. */
function create(shown: Shown, book: StandInBook) {
  const { univer } = shown;
  const before = univer.getActiveWorkbook();
  const active = before?.getActiveSheet()?.getSheetName();
  const cell = before?.getActiveRange()?.getRange();
  const sheets = book.sheets.map((sheet) => sheetData(book, sheet));
  tell(shown, () => {
    if (before) univer.disposeUnit(before.getId());
    univer.createWorkbook({
      id: `book-${Date.now()}-${Math.random()}`,
      name: "Bench",
      sheetOrder: sheets.map(({ id }) => id),
      // The grid changes what it is given; what it was given is kept to compare with.
      sheets: structuredClone(Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet]))),
    });
    if (active) goTo(univer, active, cell?.startRow, cell?.startColumn);
  });
  shown.sheets.clear();
  for (const sheet of sheets) shown.sheets.set(sheet.id, sheet);
}

/** Shows what has changed: cells where they are, or the workbook anew where more than cells has. */
function show(shown: Shown) {
  const { book } = shown;
  if (!book) return;
  const sheets = book.sheets.map((sheet) => sheetData(book, sheet));
  const before = [...shown.sheets.values()];
  const isSame =
    sheets.length === before.length &&
    sheets.every((sheet, at) => isSameFrame(before[at] as SheetData, sheet));
  if (!isSame) {
    create(shown, book);
    shown.univer.getFormula().executeCalculation();
    compute(shown);
    return;
  }
  for (const [at, sheet] of sheets.entries()) {
    const { rowCount, columnCount, cellData } = before[at] as SheetData;
    const { changes, kind } = cellChanges(cellData, sheet.cellData);
    shown.sheets.set(sheet.id, { ...sheet, rowCount, columnCount });
    if (kind === "none") continue;
    change(shown, sheet.id, changes, kind === "looks");
    if (kind === "content") compute(shown);
  }
}

/** Tells the grid what cells of a sheet become, in one piece. */
function change(
  shown: Shown,
  subUnitId: string,
  cellValue: GridLines<CellChange>,
  isLooks: boolean,
) {
  const unitId = shown.univer.getActiveWorkbook()?.getId();
  tell(shown, () =>
    shown.univer.syncExecuteCommand(SET_VALUES, {
      unitId,
      subUnitId,
      cellValue,
      // By this the grid knows that there is nothing to compute.
      ...(isLooks ? { trigger: "sheet.command.set-style" } : {}),
    }),
  );
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

/** Waits until the grid has computed what follows from all changes, and tells the edits among them. */
function compute(shown: Shown) {
  shown.isDue = true;
  shown.idle ??= computed(shown).then(() => {
    shown.idle = undefined;
    for (const sheet of shown.computed) restyle(shown, sheet);
    shown.computed.clear();
    shown.told.edited(shown.edits.splice(0));
  });
}

async function computed(shown: Shown) {
  const formula = shown.univer.getFormula();
  const deadline = performance.now() + LONGEST;
  do await formula.onCalculationResultApplied(LONGEST).catch(() => {});
  while (shown.isDue && performance.now() < deadline);
}

/** Draws the colours of a sheet's conditional formats anew where they have changed. */
function restyle(shown: Shown, sheet: Sheet) {
  const { book } = shown;
  const lines = shown.sheets.get(sheet.id)?.cellData;
  if (!book || !lines || sheet.formats.length === 0) return;
  const styles = gridStyles(sheet);
  const end = { row: sheet.cells.length - 1, column: Number.POSITIVE_INFINITY };
  const changes: GridLines<CellChange> = {};
  for (const area of sheet.formats.flatMap(({ areas }) => areas))
    overCells(area, end, (row, column) => {
      const before = lines[row]?.[column];
      const after = gridCell(book, sheet, row, column, styles.get(row)?.get(column));
      const looks = cellChange(before && { s: before.s }, after && { s: after.s });
      if (!looks || !after) return;
      putCell(changes, row, column, looks);
      putCell(lines, row, column, after);
    });
  if (Object.keys(changes).length > 0) change(shown, sheet.id, changes, true);
}

type Ranges = Parameters<
  Parameters<typeof FUniver.prototype.addEvent<"SheetValueChanged">>[1]
>[0]["effectedRanges"];

/** Takes over what is new in cells of the grid: results of formulas, and what a person edited, which it gives. */
function takeRange(shown: Shown, range: Ranges[number]): GridCells[] {
  const { book } = shown;
  const sheet = book?.sheets.find(({ name }) => name === range.getSheetName());
  const lines = sheet && shown.sheets.get(sheet.id)?.cellData;
  if (!book || !lines) return [];
  const { startRow, startColumn, endRow, endColumn } = range.getRange();
  const area = { top: startRow, left: startColumn, bottom: endRow, right: endColumn };
  const values = range.getRawValues();
  const formulas = range.getFormulas();
  let isEdited = false;
  const late: GridLines<CellChange> = {};
  overCells(area, { row: endRow, column: endColumn }, (row, column) => {
    const before = lines[row]?.[column];
    const v = (values[row - startRow]?.[column - startColumn] ?? "") as CellValue;
    const f = formulas[row - startRow]?.[column - startColumn] || undefined;
    if (f !== undefined && f === before?.f) takeResult(shown, sheet, row, column, v);
    else if (isSame(before, { v, f })) return;
    else if (shown.isResult) putCell(late, row, column, before ?? null);
    else {
      isEdited = true;
      putBox(book, sheet, row, column, boxOf(v, f, tableAt(sheet, row, column)?.name));
      putCell(lines, row, column, cellOf(before, v, f));
    }
  });
  // A result that comes when its formula has gone is nobody's doing: what stands there stays.
  if (Object.keys(late).length > 0) change(shown, sheet.id, late, true);
  // The grid computes what depends on it: the workbook need not be shown anew for that.
  if (isEdited) book.dirty = false;
  return isEdited ? [{ sheet: sheet.name, area }] : [];
}

const isSame = (before: GridCell | undefined, after: Pick<GridCell, "v" | "f">) =>
  after.f === before?.f && raw(after.v) === raw(before?.v);

/** A cell as it is after an edit: it keeps its looks. */
const cellOf = (before: GridCell | undefined, v: CellValue, f: string | undefined): GridCell => ({
  v,
  ...(f ? { f } : {}),
  ...(before?.s ? { s: before.s } : {}),
});

const boxOf = (value: CellValue, formula: string | undefined, table: string | undefined) =>
  formula ? { value, formula: formula.replace(/^=/, "") } : entered(value, table);

/** Takes what the grid computed in a cell over into the workbook. */
function takeResult(shown: Shown, sheet: Sheet, row: number, column: number, value: CellValue) {
  const box = boxAt(sheet, row, column);
  if (box?.formula === undefined) return;
  const result = plain(value, box.formula);
  if (result === box.value) return;
  box.value = result;
  shown.computed.add(sheet);
}

/** A value as the grid may hold it: true and false as 1 and 0, blank as an empty text. */
const raw = (value: CellValue | undefined) =>
  typeof value === "boolean" ? Number(value) : (value ?? "");

/** The grid holds true and false as 1 and 0; the formulas that give them say so. */
const plain = (value: CellValue, formula: string): CellValue =>
  (value === 0 || value === 1) && /^(AND|OR|NOT|ISNUMBER|TRUE|FALSE)\b/i.test(formula)
    ? value === 1
    : value;

export type { FUniver };
