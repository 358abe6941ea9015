import type { Cell, Sheet as ReadSheet, CellStyle as ReadStyle } from "hucre/xlsx";
import { readXlsx } from "hucre/xlsx";
import { storedFormula } from "../../excel/read/storedFormula";
import type { CellStyle } from "../../look/cellStyle";
import { memoryXml, readMemoryXml } from "../../memory/memory";
import { toSerial } from "../../quantities/dates";
import type { CellValue } from "../../records/kind";
import { BookError } from "../../sheets/bookError";
import { readArea } from "../../sheets/cells/area";
import { columnFormulas } from "../../sheets/cells/columnFormulas";
import { planFor } from "../../sheets/plan/plan";
import type { SheetCells } from "../../sheets/snapshot";
import { readBook } from "../../xlsx/file";
import { BookEdit } from "../../xlsx/patch/bookEdit";
import { readMemory, remember } from "../../xlsx/remembered";
import { newBook as newFile } from "../../xlsx/write/newBook";
import type { DraftCell, SheetDraft } from "../../xlsx/write/sheetDraft";
import {
  addSheet,
  boxAt,
  newBook,
  newId,
  putBox,
  type Sheet,
  type StandInBook,
  tableAt,
} from "../book";
import { shown } from "../entered";
import { type GridStyle, gridSizes, gridStyles } from "./gridLook";

/**
 * A workbook of the stand-in from an .xlsx file: values, formulas, tables, merged cells, notes, frozen panes,
 * widths, looks, our memory. Validations and page set-up are not taken over: the bench shows neither.
 *
 * @throws {BookError} where the file is no workbook
 */
export async function bookOfFile(file: Uint8Array): Promise<StandInBook> {
  let workbook: Awaited<ReturnType<typeof readXlsx>>;
  try {
    workbook = await readXlsx(file, { readStyles: true });
  } catch (error) {
    throw new BookError(
      () => `cannot be opened (${(error as Error).message}); choose an .xlsx workbook`,
    );
  }
  const book = newBook();
  // A thread of comments is told by its text, as Excel does, and not by the note that stands for it.
  const { sheets: told } = await readBook(file);
  for (const source of workbook.sheets) {
    const sheet = addSheet(book, source.name);
    for (const take of [takeTables, takeCells, takeLooks, takeFormats]) take(book, sheet, source);
    takeNotes(book, sheet, source, told.find(({ name }) => name === source.name)?.cells?.note);
    const beside = told.find(({ name }) => name === source.name)?.beside ?? [];
    for (const area of beside) {
      const named = book.sheets.reduce((sum, { names }) => sum + names.length, 1);
      sheet.names.push({ name: `GearResults${named}`, area: { ...area }, visible: false });
    }
    sheet.merges = (source.merges ?? []).map(({ startRow, startCol, endRow, endCol }) => ({
      top: startRow,
      left: startCol,
      bottom: endRow,
      right: endCol,
    }));
    const { rows = 0, columns = 0 } = source.freezePane ?? {};
    if (rows || columns) sheet.frozen = { top: 0, left: 0, bottom: rows - 1, right: columns - 1 };
  }
  const memory = readMemory(file);
  if (memory) book.parts.push({ id: newId(book), xml: memoryXml(memory) });
  book.dirty = false;
  return book;
}

function takeTables(book: StandInBook, sheet: Sheet, { tables = [] }: ReadSheet) {
  for (const { name, displayName, range, showTotalRow } of tables) {
    const area = range ? readArea(range) : undefined;
    if (area)
      sheet.tables.push({
        id: newId(book),
        name: displayName ?? name,
        area,
        showTotals: showTotalRow ?? false,
        properties: {},
      });
  }
}

function takeCells(book: StandInBook, sheet: Sheet, { rows, cells }: ReadSheet) {
  for (const [row, values] of rows.entries())
    for (const [column, value] of values.entries()) {
      const formula = cells?.get(`${row},${column}`)?.formula;
      const plain: CellValue = value instanceof Date ? toSerial(value) : value;
      if (plain === null && formula === undefined) continue;
      const shownFormula =
        formula === undefined ? {} : { formula: shown(formula, tableAt(sheet, row, column)?.name) };
      putBox(book, sheet, row, column, { value: plain ?? "", ...shownFormula });
    }
}

const LAST_ROW = 1_048_575;
const LAST_COLUMN = 16_383;

function takeLooks(_book: StandInBook, sheet: Sheet, { cells, columns = [], rowDefs }: ReadSheet) {
  looks(sheet, cells ?? new Map());
  for (const [column, { width }] of columns.entries())
    if (width)
      sheet.looks.push({
        area: { top: 0, left: column, bottom: LAST_ROW, right: column },
        property: "columnWidth",
        value: (width * 7 + 5) * 0.75,
      });
  for (const [row, { height }] of rowDefs ?? [])
    if (height)
      sheet.looks.push({
        area: { top: row, left: 0, bottom: row, right: LAST_COLUMN },
        property: "rowHeight",
        value: height,
      });
}

/** Row and column of a key of the file library's cells. */
const placeOf = (key: string) => {
  const [row = 0, column = 0] = key.split(",").map(Number);
  return { row, column };
};

function takeNotes(
  book: StandInBook,
  sheet: Sheet,
  { cells = new Map() }: ReadSheet,
  told: SheetCells["note"],
) {
  for (const [key, { comment }] of cells) {
    const { row, column } = placeOf(key);
    if (comment)
      sheet.notes.push({
        id: newId(book),
        area: { top: row, left: column, bottom: row, right: column },
        content: told?.(row, column) ?? comment.text,
      });
  }
}

function takeFormats(book: StandInBook, sheet: Sheet, { conditionalRules = [] }: ReadSheet) {
  for (const rule of [...conditionalRules].sort((a, b) => a.priority - b.priority)) {
    const area = readArea(rule.range);
    if (area && rule.type === "cellIs" && typeof rule.formula === "string")
      sheet.formats.push({
        id: newId(book),
        areas: [area],
        type: "CellValue",
        stopIfTrue: false,
        properties: {
          rule: { formula1: `=${rule.formula}`, operator: "EqualTo" },
          ...colours(rule.style),
        },
      });
  }
}

const colour = (rgb: string | undefined) => (rgb ? `#${rgb.slice(-6)}` : undefined);

const fillOf = (style: ReadStyle | undefined): string | undefined =>
  style?.fill?.type === "pattern"
    ? colour(style.fill.fgColor?.rgb ?? style.fill.bgColor?.rgb)
    : undefined;

const colours = (style: ReadStyle | undefined) => ({
  ...(fillOf(style) ? { "format.fill.color": fillOf(style) } : {}),
  ...(style?.font?.color?.rgb ? { "format.font.color": colour(style.font.color.rgb) } : {}),
});

const ALIGN: Record<string, string> = {
  left: "Left",
  center: "Center",
  right: "Right",
  top: "Top",
  bottom: "Bottom",
};

const properties = (style: ReadStyle): [string, unknown][] =>
  (
    [
      ["fill.color", fillOf(style)],
      ["font.color", colour(style.font?.color?.rgb)],
      ["font.bold", style.font?.bold],
      ["font.size", style.font?.size],
      ["font.name", style.font?.name],
      ["horizontalAlignment", ALIGN[style.alignment?.horizontal ?? ""]],
      ["verticalAlignment", ALIGN[style.alignment?.vertical ?? ""]],
      ["wrapText", style.alignment?.wrapText],
      ["numberFormat", style.numFmt],
    ] as [string, unknown][]
  ).filter(([, value]) => value !== undefined);

interface Styled {
  readonly row: number;
  readonly style: ReadStyle;
  readonly text: string;
}

/** Cells of one column that look alike and follow each other become one look. */
function looks(sheet: Sheet, cells: ReadonlyMap<string, Partial<Cell>>) {
  const columns = new Map<number, Styled[]>();
  for (const [key, { style }] of cells) {
    if (!style) continue;
    const { row, column } = placeOf(key);
    const line = columns.get(column) ?? [];
    line.push({ row, style, text: JSON.stringify(style) });
    columns.set(column, line);
  }
  for (const [column, line] of columns)
    for (const { top, bottom, style } of alikeInLine(line))
      for (const [property, value] of properties(style))
        sheet.looks.push({ area: { top, left: column, bottom, right: column }, property, value });
}

/** Rows of a column that follow each other and look alike, from the first to the last. */
function alikeInLine(line: Styled[]): { top: number; bottom: number; style: ReadStyle }[] {
  const stretches: { top: number; bottom: number; style: ReadStyle; text: string }[] = [];
  for (const { row, style, text } of line.sort((a, b) => a.row - b.row)) {
    const last = stretches.at(-1);
    if (last?.text === text && last.bottom === row - 1) last.bottom = row;
    else stretches.push({ top: row, bottom: row, style, text });
  }
  return stretches;
}

/** The stand-in's workbook as an .xlsx file, formulas in the form that a file stores, our memory with it. */
export function fileOfBook(book: StandInBook): Uint8Array {
  const memory = book.parts.map(({ xml }) => readMemoryXml(xml)).find((one) => one !== undefined);
  const formulas = memory ? columnFormulas(planFor(memory.lineup)) : new Map();
  const edit = new BookEdit(newFile("Records of the bench, invented"));
  for (const sheet of book.sheets) edit.addSheet(draftOf(sheet, formulas));
  remember(edit.pack, edit.bookPart, { memory });
  return edit.save();
}

function draftOf(
  sheet: Sheet,
  formulas: ReadonlyMap<string, ReadonlyMap<string, string>>,
): SheetDraft {
  const styles = gridStyles({ ...sheet, formats: [] });
  const { columns } = gridSizes(sheet);
  const height = Math.max(sheet.cells.length, ...[...styles.keys()].map((row) => row + 1));
  const width = Math.max(1, ...sheet.cells.map((row) => row?.length ?? 0));
  const { frozen } = sheet;
  return {
    name: sheet.name,
    rows: draftRows(sheet, styles, height, width),
    widths: Array.from({ length: width }, (_, column) => ((columns[column]?.w ?? 69) - 5) / 7),
    heights: new Map(),
    merges: sheet.merges,
    tables: sheet.tables.map(({ name, area, showTotals }) => ({
      name,
      area,
      totals: showTotals,
      headers: Array.from({ length: area.right - area.left + 1 }, (_, at) =>
        String(boxAt(sheet, area.top, area.left + at)?.value ?? ""),
      ),
      formulas: formulas.get(name),
    })),
    validations: [],
    rules: [],
    gridLines: true,
    notes: sheet.notes.map(({ area, content }) => ({
      row: area.top,
      column: area.left,
      text: content,
    })),
    ...(frozen ? { frozen: { rows: frozen.bottom + 1, columns: frozen.right + 1 } } : {}),
  };
}

/** Every cell that holds something or looks like something. */
function draftRows(
  sheet: Sheet,
  styles: ReturnType<typeof gridStyles>,
  height: number,
  width: number,
): SheetDraft["rows"] {
  const rows = new Map<number, Map<number, DraftCell>>();
  for (let row = 0; row < height; row++) {
    const cells = new Map<number, DraftCell>();
    for (let column = 0; column < width; column++) {
      const cell = draftCell(sheet, row, column, styles.get(row)?.get(column));
      if (cell) cells.set(column, cell);
    }
    if (cells.size > 0) rows.set(row, cells);
  }
  return rows;
}

function draftCell(
  sheet: Sheet,
  row: number,
  column: number,
  look: GridStyle | undefined,
): DraftCell | undefined {
  const box = boxAt(sheet, row, column);
  const value = box?.value ?? null;
  if (!look && value === null && box?.formula === undefined) return undefined;
  return {
    value,
    ...(look ? { style: cellStyle(look) } : {}),
    ...(box?.formula === undefined
      ? {}
      : { formula: storedFormula(box.formula, tableAt(sheet, row, column)?.name ?? "") }),
  };
}

const cellStyle = ({ bg, cl, bl, fs, ff, n, tb }: GridStyle): CellStyle => ({
  font: {
    ...(ff ? { name: ff } : {}),
    ...(fs ? { size: fs } : {}),
    ...(bl ? { bold: true } : {}),
    ...(cl ? { color: { rgb: cl.rgb.replace("#", "") } } : {}),
  },
  ...(bg
    ? { fill: { type: "pattern", pattern: "solid", fgColor: { rgb: bg.rgb.replace("#", "") } } }
    : {}),
  ...(n ? { numFmt: n.pattern } : {}),
  ...(tb ? { alignment: { wrapText: true, vertical: "top" } } : {}),
});
