import type { Cell, CellStyle, WriteSheet } from "hucre/xlsx";
import { readXlsx, writeXlsx } from "hucre/xlsx";
import { storedFormula } from "../../excel/storedFormula";
import { memoryXml, readMemoryXml } from "../../memory/memory";
import { toSerial } from "../../quantities/dates";
import type { CellValue } from "../../records/kind";
import { type Area, areaAddress, readArea } from "../../sheets/area";
import { BookError } from "../../sheets/bookError";
import { columnFormulas } from "../../sheets/columnFormulas";
import { planFor } from "../../sheets/plan";
import { finish, readMemory } from "../../xlsx/correctPackage";
import { addSheet, type Book, newBook, newId, putBox, type Sheet, tableAt } from "../book";
import { shown } from "../entered";
import { type GridStyle, gridSizes, gridStyles } from "./gridLook";

/**
 * A workbook of the stand-in from an .xlsx file: values, formulas, tables, merged cells, notes, frozen panes,
 * widths, looks, our memory. Validations and page set-up are not taken over: the bench shows neither.
 *
 * @throws {BookError} where the file is no workbook
 */
export async function bookOfFile(file: Uint8Array): Promise<Book> {
  let workbook: Awaited<ReturnType<typeof readXlsx>>;
  try {
    workbook = await readXlsx(file, { readStyles: true });
  } catch (error) {
    throw new BookError(`cannot be opened (${(error as Error).message}); choose an .xlsx workbook`);
  }
  const book = newBook();
  for (const source of workbook.sheets) {
    const sheet = addSheet(book, source.name);
    for (const { name, displayName, range, showTotalRow } of source.tables ?? []) {
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
    source.rows.forEach((row, at) => {
      row.forEach((value, column) => {
        const formula = source.cells?.get(`${at},${column}`)?.formula;
        const plain: CellValue = value instanceof Date ? toSerial(value) : value;
        if (plain === null && formula === undefined) return;
        putBox(book, sheet, at, column, {
          value: plain ?? "",
          ...(formula === undefined
            ? {}
            : { formula: shown(formula, tableAt(sheet, at, column)?.name) }),
        });
      });
    });
    looks(sheet, source.cells ?? new Map());
    source.columns?.forEach(({ width }, column) => {
      if (width)
        sheet.looks.push({
          area: { top: 0, left: column, bottom: 1_048_575, right: column },
          property: "columnWidth",
          value: (width * 7 + 5) * 0.75,
        });
    });
    for (const [row, { height }] of source.rowDefs ?? [])
      if (height)
        sheet.looks.push({
          area: { top: row, left: 0, bottom: row, right: 16_383 },
          property: "rowHeight",
          value: height,
        });
    sheet.merges = (source.merges ?? []).map(({ startRow, startCol, endRow, endCol }) => ({
      top: startRow,
      left: startCol,
      bottom: endRow,
      right: endCol,
    }));
    for (const [key, { comment }] of source.cells ?? []) {
      const [row = 0, column = 0] = key.split(",").map(Number);
      if (comment)
        sheet.notes.push({
          id: newId(book),
          area: { top: row, left: column, bottom: row, right: column },
          content: comment.text,
        });
    }
    const frozen = source.freezePane;
    if (frozen?.rows || frozen?.columns)
      sheet.frozen = {
        top: 0,
        left: 0,
        bottom: (frozen.rows ?? 0) - 1,
        right: (frozen.columns ?? 0) - 1,
      };
    for (const rule of [...(source.conditionalRules ?? [])].sort(
      (a, b) => a.priority - b.priority,
    )) {
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
  const memory = readMemory(file);
  if (memory) book.parts.push({ id: newId(book), xml: memoryXml(memory) });
  book.dirty = false;
  return book;
}

const colour = (rgb: string | undefined) => (rgb ? `#${rgb.slice(-6)}` : undefined);

const fillOf = (style: CellStyle | undefined): string | undefined =>
  style?.fill?.type === "pattern"
    ? colour(style.fill.fgColor?.rgb ?? style.fill.bgColor?.rgb)
    : undefined;

const colours = (style: CellStyle | undefined) => ({
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

const properties = (style: CellStyle): [string, unknown][] =>
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

/** Cells of one column that look alike and follow each other become one look. */
function looks(sheet: Sheet, cells: ReadonlyMap<string, Partial<Cell>>) {
  const columns = new Map<number, { row: number; style: CellStyle; text: string }[]>();
  for (const [key, { style }] of cells) {
    if (!style) continue;
    const [row = 0, column = 0] = key.split(",").map(Number);
    const line = columns.get(column) ?? [];
    line.push({ row, style, text: JSON.stringify(style) });
    columns.set(column, line);
  }
  for (const [column, line] of columns) {
    line.sort((one, other) => one.row - other.row);
    for (let from = 0; from < line.length; ) {
      let to = from;
      while (
        line[to + 1]?.text === line[from]?.text &&
        line[to + 1]?.row === (line[to]?.row ?? 0) + 1
      )
        to++;
      const area: Area = {
        top: line[from]?.row ?? 0,
        left: column,
        bottom: line[to]?.row ?? 0,
        right: column,
      };
      for (const [property, value] of properties(line[from]?.style ?? {}))
        sheet.looks.push({ area, property, value });
      from = to + 1;
    }
  }
}

/** The stand-in's workbook as an .xlsx file, formulas in the form that a file stores, our memory with it. */
export async function fileOfBook(book: Book): Promise<Uint8Array> {
  const memory = book.parts.map(({ xml }) => readMemoryXml(xml)).find((one) => one !== undefined);
  const file = await writeXlsx({ sheets: book.sheets.map(fileSheet) });
  return finish(file, [], memory, memory ? columnFormulas(planFor(memory.lineup)) : new Map());
}

function fileSheet(sheet: Sheet): WriteSheet {
  const styles = gridStyles({ ...sheet, formats: [] });
  const { columns } = gridSizes(sheet);
  const cells = new Map<string, Partial<Cell>>();
  const rows: CellValue[][] = [];
  const height = Math.max(sheet.cells.length, ...[...styles.keys()].map((row) => row + 1));
  const width = Math.max(1, ...sheet.cells.map((row) => row?.length ?? 0));
  for (let row = 0; row < height; row++) {
    const line: CellValue[] = [];
    for (let column = 0; column < width; column++) {
      const box = sheet.cells[row]?.[column];
      const look = styles.get(row)?.get(column);
      line.push(box?.value ?? null);
      const style = look && cellStyle(look);
      if (box?.formula !== undefined)
        cells.set(`${row},${column}`, {
          type: "formula",
          value: box.value ?? "",
          formula: storedFormula(box.formula, tableAt(sheet, row, column)?.name ?? ""),
          formulaResult: box.value ?? "",
          ...(style ? { style } : {}),
        });
      else if (style) cells.set(`${row},${column}`, { value: box?.value ?? null, style });
    }
    rows.push(line);
  }
  for (const { area, content } of sheet.notes) {
    const key = `${area.top},${area.left}`;
    cells.set(key, { ...cells.get(key), comment: { text: content } });
  }
  const frozen = sheet.frozen;
  return {
    name: sheet.name,
    rows,
    cells,
    columns: Array.from({ length: width }, (_, column) => ({
      width: ((columns[column]?.w ?? 69) - 5) / 7,
    })),
    merges: sheet.merges.map(({ top, left, bottom, right }) => ({
      startRow: top,
      startCol: left,
      endRow: bottom,
      endCol: right,
    })),
    tables: sheet.tables.map(({ name, area, showTotals }) => ({
      name,
      range: areaAddress(area),
      showTotalRow: showTotals,
      columns: Array.from({ length: area.right - area.left + 1 }, (_, at) => ({
        name: String(sheet.cells[area.top]?.[area.left + at]?.value ?? ""),
      })),
      style: "TableStyleLight1",
      showRowStripes: false,
    })),
    ...(frozen ? { freezePane: { rows: frozen.bottom + 1, columns: frozen.right + 1 } } : {}),
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
