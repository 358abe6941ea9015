import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import enUS from "@univerjs/preset-sheets-core/locales/en-US";
import { createUniver, type FUniver, LocaleType, mergeLocales } from "@univerjs/presets";
import "@univerjs/preset-sheets-core/lib/index.css";
import type { CellValue } from "../../records/kind";
import type { Area } from "../../sheets/area";
import { type Book, boxAt, putBox, type Sheet, tableAt } from "../book";
import { entered } from "../entered";
import { gridFormula } from "./gridFormula";
import { gridSizes, gridStyles } from "./gridLook";

/** The spreadsheet grid of the bench: shows a workbook of the stand-in, computes it, and takes what is typed. */
export interface Grid {
  /** Shows the workbook as it is now, and computes its formulas. */
  show(book: Book): void;
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

interface GridCell {
  v?: CellValue;
  f?: string;
  t?: 1 | 2;
  s?: object;
}

const sheetData = (book: Book, sheet: Sheet) => {
  const styles = gridStyles(sheet);
  const { columns, rows } = gridSizes(sheet);
  const cellData: Record<number, Record<number, GridCell>> = {};
  const height = Math.max(sheet.cells.length, 1);
  const width = Math.max(1, ...sheet.cells.map((row) => row?.length ?? 0));
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const box = boxAt(sheet, row, column);
      const style = styles.get(row)?.get(column);
      if (!box && !style) continue;
      const line = cellData[row] ?? {};
      cellData[row] = line;
      line[column] = {
        ...(box?.formula !== undefined
          ? { f: gridFormula(book, sheet, row, box.formula), v: box.value }
          : box
            ? { v: box.value, ...(typeof box.value === "string" ? { t: 1 as const } : {}) }
            : {}),
        ...(style ? { s: style } : {}),
      };
    }
  const frozen = sheet.frozen;
  return {
    id: sheet.id,
    name: sheet.name,
    rowCount: Math.max(height + 20, 60),
    columnCount: Math.max(width + 4, 20),
    cellData,
    columnData: columns,
    rowData: rows,
    defaultColumnWidth: 88,
    mergeData: sheet.merges.map(({ top, left, bottom, right }) => ({
      startRow: top,
      startColumn: left,
      endRow: bottom,
      endColumn: right,
    })),
    ...(frozen
      ? {
          freeze: {
            startRow: frozen.bottom + 1,
            startColumn: frozen.right + 1,
            ySplit: frozen.bottom + 1,
            xSplit: frozen.right + 1,
          },
        }
      : {}),
  };
};

/** Cells of a sheet that a person edited or selected. */
export interface GridCells {
  readonly sheet: string;
  readonly area: Area;
}

/** So long a computation is waited for, ms. */
const LONGEST = 20_000;

/** The grid's own mode in which a workbook that is shown is not computed before it is asked to be. */
const NOT_BY_ITSELF = 2;

export function makeGrid(
  container: string,
  told: {
    /** What was edited, once it has been computed. */
    readonly edited: (cells: readonly GridCells[]) => void;
    readonly selected: (cells: GridCells) => void;
  },
): Grid {
  const { univerAPI } = createUniver({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: mergeLocales(enUS) },
    presets: [
      UniverSheetsCorePreset({
        container,
        formula: { initialFormulaComputing: NOT_BY_ITSELF },
      }),
    ],
  });
  let book: Book | undefined;
  let ours = 0;
  /** The grid takes functions only once it has a workbook. */
  const waiting: [string, (...args: unknown[]) => unknown][] = [];
  let idle: Promise<void> = Promise.resolve();

  /** Takes what the grid computed over into the workbook, and back into styles that depend on it. */
  const takeOver = () => {
    if (!book) return;
    const workbook = univerAPI.getActiveWorkbook();
    for (const sheet of book.sheets) {
      const height = sheet.cells.length;
      const width = Math.max(0, ...sheet.cells.map((row) => row?.length ?? 0));
      if (height === 0 || width === 0) continue;
      const values = workbook
        ?.getSheetByName(sheet.name)
        ?.getRange(0, 0, height, width)
        .getRawValues();
      sheet.cells.forEach((row, at) => {
        row?.forEach((box, column) => {
          if (box?.formula === undefined) return;
          const value = values?.[at]?.[column];
          box.value =
            value === undefined || value === null ? "" : plain(value as CellValue, box.formula);
        });
      });
    }
  };

  const computed = async () => {
    const formula = univerAPI.getFormula();
    let hasStarted = false;
    const start = formula.calculationStart(() => {
      hasStarted = true;
    });
    const longest = performance.now() + LONGEST;
    const done = formula.onCalculationResultApplied(LONGEST);
    formula.executeCalculation();
    await done.catch(() => {});
    // On a busy page the grid may give up before the computation has even started.
    while (!hasStarted && performance.now() < longest)
      await formula.onCalculationResultApplied(LONGEST).catch(() => {});
    start.dispose();
    takeOver();
  };

  const restyle = (sheet: Sheet) => {
    const worksheet = univerAPI.getActiveWorkbook()?.getSheetByName(sheet.name);
    const styles = gridStyles(sheet);
    for (const { areas } of sheet.formats)
      for (const { top, left, bottom, right } of areas)
        for (let row = top; row <= Math.min(bottom, sheet.cells.length - 1); row++)
          for (let column = left; column <= right; column++) {
            const style = styles.get(row)?.get(column);
            const range = worksheet?.getRange(row, column);
            if (style?.bg) range?.setBackgroundColor(style.bg.rgb);
            if (style?.cl) range?.setFontColor(style.cl.rgb);
          }
  };

  univerAPI.addEvent(univerAPI.Event.SheetValueChanged, ({ effectedRanges }) => {
    if (ours > 0 || !book) return;
    const changed: GridCells[] = [];
    for (const range of effectedRanges) {
      const sheet = book.sheets.find(({ name }) => name === range.getSheetName());
      if (!sheet) continue;
      const { startRow, startColumn, endRow, endColumn } = range.getRange();
      const values = range.getRawValues();
      const formulas = range.getFormulas();
      for (let row = startRow; row <= endRow; row++)
        for (let column = startColumn; column <= endColumn; column++) {
          const formula = formulas[row - startRow]?.[column - startColumn];
          const value = values[row - startRow]?.[column - startColumn];
          const before = boxAt(sheet, row, column);
          const was = before?.formula;
          if (formula && was !== undefined && gridFormula(book, sheet, row, was) === formula)
            continue;
          const box = formula
            ? { value: (value ?? "") as CellValue, formula: formula.replace(/^=/, "") }
            : entered(value ?? "", tableAt(sheet, row, column)?.name);
          if (box?.value === before?.value && box?.formula === was) continue;
          putBox(book, sheet, row, column, box);
          changed.push({
            sheet: sheet.name,
            area: { top: row, left: column, bottom: row, right: column },
          });
        }
    }
    if (changed.length === 0) return;
    // The grid computes what depends on it; the workbook need not be shown anew for that.
    book.dirty = false;
    idle = computed().then(() => {
      ours++;
      for (const sheet of book?.sheets ?? []) restyle(sheet);
      ours--;
      told.edited(changed);
    });
  });

  univerAPI.addEvent(univerAPI.Event.SelectionChanged, ({ worksheet, selections }) => {
    const [first] = selections;
    if (ours > 0 || !book || !first) return;
    const { startRow, startColumn, endRow, endColumn } = first;
    told.selected({
      sheet: worksheet.getSheetName(),
      area: { top: startRow, left: startColumn, bottom: endRow, right: endColumn },
    });
  });

  return {
    get idle() {
      return idle;
    },
    show: (shown) => {
      book = shown;
      ours++;
      const before = univerAPI.getActiveWorkbook();
      const active = before?.getActiveSheet()?.getSheetName();
      const cell = before?.getActiveRange()?.getRange();
      const sheets =
        shown.sheets.length > 0 ? shown.sheets.map((sheet) => sheetData(shown, sheet)) : [];
      if (before) univerAPI.disposeUnit(before.getId());
      univerAPI.createWorkbook({
        id: `book-${Date.now()}-${Math.random()}`,
        name: "Bench",
        sheetOrder: sheets.map(({ id }) => id),
        sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
      });
      for (const [name, implementation] of waiting.splice(0))
        univerAPI.getFormula().registerFunction(name, implementation as never, name);
      const workbook = univerAPI.getActiveWorkbook();
      const sheet = active ? workbook?.getSheetByName(active) : undefined;
      if (workbook && sheet) {
        workbook.setActiveSheet(sheet);
        if (cell) {
          sheet.scrollToCell(Math.max(0, cell.startRow - 6), Math.max(0, cell.startColumn - 3));
          workbook.setActiveRange(sheet.getRange(cell.startRow, cell.startColumn));
        }
      }
      idle = computed().finally(() => {
        for (const sheet of shown.sheets) restyle(sheet);
        ours--;
      });
    },
    select: (name, row, column) => {
      const workbook = univerAPI.getActiveWorkbook();
      const sheet = workbook?.getSheetByName(name);
      if (!workbook || !sheet) return;
      workbook.setActiveSheet(sheet);
      const range = sheet.getRange(row, column);
      sheet.scrollToCell(Math.max(0, row - 6), Math.max(0, column - 3));
      workbook.setActiveRange(range);
    },
    register: (name, implementation) => {
      if (univerAPI.getActiveWorkbook())
        univerAPI.getFormula().registerFunction(name, implementation as never, name);
      else waiting.push([name, implementation]);
    },
    type: (name, address, value) => {
      univerAPI.getActiveWorkbook()?.getSheetByName(name)?.getRange(address).setValue(value);
    },
    read: (name, address) => {
      const value = univerAPI
        .getActiveWorkbook()
        ?.getSheetByName(name)
        ?.getRange(address)
        .getRawValue();
      return (value ?? null) as CellValue;
    },
    active: () => {
      const workbook = univerAPI.getActiveWorkbook();
      const range = workbook?.getActiveRange();
      return range ? `${workbook?.getActiveSheet().getSheetName()}!${range.getA1Notation()}` : "";
    },
  };
}

/** The grid holds true and false as 1 and 0; the formulas that give them say so. */
const plain = (value: CellValue, formula: string): CellValue =>
  (value === 0 || value === 1) && /^(AND|OR|NOT|ISNUMBER|TRUE|FALSE)\b/i.test(formula)
    ? value === 1
    : value;

export type { FUniver };
