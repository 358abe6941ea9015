import { body } from "../look/look";
import { groupedBy } from "../quantities/groupedBy";
import { BookError } from "../sheets/bookError";
import { areaAddress, readArea } from "../sheets/cells/area";
import type { CellWrite } from "../sheets/cells/cell";
import type { PlannedSheet } from "../sheets/plan/plannedSheet";
import type { TableChange } from "../sheets/plan/reconcile";
import type { OwnLayout, TableSnapshot } from "../sheets/snapshot";
import { partXml, relationsOf } from "./package/relations";
import type { BookEdit } from "./patch/bookEdit";
import type { SheetEdit } from "./patch/sheetEdit";
import { tableOf } from "./readSheet";
import { rowHeight } from "./rowHeight";
import { appendTo, type Edit, edited, elementText, setAttribute } from "./xml/editText";
import { childOf, childrenOf, isOn, type XmlElement } from "./xml/readXml";

/** What is written into one table: cells, and rows at its foot. */
export type TableFill = Pick<TableChange, "table" | "writes" | "added">;

/**
 * Writes cells into a table of a workbook, each in its own look; a new one looks as the cell above.
 *
 * @param planned what the table is planned to be, for the look of columns that have no cell yet
 * @throws {BookError} where the workbook has lost the table
 */
export function fillTable(book: BookEdit, fill: TableFill, planned?: PlannedSheet): void {
  const { table, added, writes } = fill;
  if (table.ownLayout) {
    fillOwnLayout(book, sheetOf(book, table), table, table.ownLayout, writes);
    return;
  }
  const bottom = table.top + table.rowCount;
  if (added > 0) addRows(book, table, added);
  const sheet = sheetOf(book, table);
  const above = sheet.stylesIn(bottom);
  for (const write of writes) {
    const column = table.left + write.column;
    const header = table.headers[write.column];
    const style = above.get(column) ?? plannedStyle(book, planned, header);
    put(book, sheet, { ...write, row: table.top + 1 + write.row, column }, style);
  }
  setHeights(book, sheet, table, writes, above);
}

function sheetOf(book: BookEdit, { sheet: name }: TableSnapshot): SheetEdit {
  const sheet = book.sheet(name);
  if (!sheet) throw new BookError(({ book }) => book.lostSheet(name));
  return sheet;
}

const plannedStyle = (book: BookEdit, planned: PlannedSheet | undefined, name?: string) => {
  const column = planned?.columns.find(({ header }) => header === name);
  return column && book.styles.cell(body(column));
};

function put(book: BookEdit, sheet: SheetEdit, write: CellWrite, style: number | undefined): void {
  const { row, column, value } = write;
  const stored =
    typeof value === "number" && book.from1904
      ? book.stored(value, sheet.stylesIn(row).get(column) ?? style ?? 0)
      : value;
  sheet.write({ ...write, value: stored, style });
}

/** Writes into somebody's own layout: values alone, each in its cell's own look. */
function fillOwnLayout(
  book: BookEdit,
  sheet: SheetEdit,
  { sheet: name }: TableSnapshot,
  { holds, written }: OwnLayout,
  writes: readonly CellWrite[],
): void {
  for (const { row, column, value } of writes) {
    const at = holds(row, column);
    if (!at) throw new BookError(({ book }) => book.noCell(name, JSON.stringify(value)));
    const said = written(row, column, value);
    put(book, sheet, { row: at.row, column: at.column, value: said }, undefined);
  }
}

/** Makes a table longer: its part, what follows its rows, and what stands below it in the way. */
function addRows(book: BookEdit, table: TableSnapshot, added: number): void {
  const { pack } = book;
  const { top, left, rowCount, headers } = table;
  const bottom = top + rowCount;
  const { part: sheetPart } = sheetOf(book, table);
  const part = relationsOf(pack, sheetPart).find(
    ({ type, part }) => type === "table" && tableOf(partXml(pack, part), part).name === table.name,
  )?.part;
  if (part === undefined) throw new BookError(({ book }) => book.lostTable(table.name));
  const below = { top: bottom + 1, left, bottom: bottom + added, right: left + headers.length - 1 };
  const hasTotals = Number(partXml(pack, part).attributes.get("totalsRowCount") ?? 0) > 0;
  if (hasTotals || sheetOf(book, table).holdsAny(below))
    book.insertRows(table.sheet, bottom + 1, added);
  const root = partXml(pack, part);
  const xml = pack.text(part);
  /** Totals have moved down, and with them what ends behind them. */
  const longer = (element: XmlElement | undefined): Edit[] => {
    const area = readArea(element?.attributes.get("ref") ?? "");
    if (!element || area?.bottom !== bottom) return [];
    const ref = areaAddress({ ...area, bottom: bottom + added });
    return [setAttribute(xml, element, "ref", ref)];
  };
  pack.put(part, edited(xml, [...longer(root), ...longer(childOf(root, "autoFilter"))]));
  stretch(sheetOf(book, table), table, added);
}

/** Validations and conditional formats down a column of a table go on over the rows that are added. */
function stretch(sheet: SheetEdit, { top, left, rowCount, headers }: TableSnapshot, added: number) {
  const bottom = top + rowCount;
  const right = left + headers.length - 1;
  const longer = (address: string): string => {
    const area = readArea(address);
    return area &&
      area.bottom === bottom &&
      area.top <= top + 1 &&
      area.left >= left &&
      area.right <= right
      ? areaAddress({ ...area, bottom: bottom + added })
      : address;
  };
  const ruled = [
    ...childrenOf(sheet.root, "conditionalFormatting"),
    ...childrenOf(childOf(sheet.root, "dataValidations"), "dataValidation"),
  ];
  for (const element of ruled) {
    const areas = element.attributes.get("sqref") ?? "";
    const now = areas.split(/\s+/).map(longer).join(" ");
    if (now !== areas) sheet.edit(setAttribute(sheet.text, element, "sqref", now));
  }
}

/** Rows of a table of ours are as high as the texts ask that they now hold; a height that somebody set stays. */
function setHeights(
  book: BookEdit,
  sheet: SheetEdit,
  table: TableSnapshot,
  writes: readonly CellWrite[],
  above: ReadonlyMap<number, number>,
): void {
  if (!table.name.startsWith("Gear")) return;
  const byRow = groupedBy(writes, ({ row }) => row);
  const widths = widthsOf(sheet.root);
  for (const [row, cells] of byRow) {
    const at = table.top + 1 + row;
    if (sheet.hasSetHeight(at)) continue;
    const styles = sheet.stylesIn(at);
    const wrapped = table.headers.flatMap((_header, column) => {
      const place = table.left + column;
      const width = widths(place);
      if (width === undefined || !book.styles.wraps(styles.get(place) ?? above.get(place) ?? 0))
        return [];
      const write = cells.findLast((one) => one.column === column);
      return [{ value: write ? write.value : table.cell(row, column), width }];
    });
    const height = rowHeight(wrapped);
    if (height !== undefined) sheet.setRow(at, "ht", String(height));
  }
}

/** Widths of a sheet's columns, in characters. */
function widthsOf(root: XmlElement): (column: number) => number | undefined {
  const columns = childrenOf(childOf(root, "cols"), "col").map(({ attributes }) => ({
    from: Number(attributes.get("min")) - 1,
    to: Number(attributes.get("max")) - 1,
    width: Number(attributes.get("width")),
  }));
  return (column) => columns.find(({ from, to }) => column >= from && column <= to)?.width;
}

/** A table of the plan gives rows that are added in a spreadsheet the formulas of now. */
export function giveFormulas(
  book: BookEdit,
  { name, sheet }: TableSnapshot,
  formulas: ReadonlyMap<string, string> | undefined,
): void {
  const { pack } = book;
  const listed = book.worksheets.find((one) => one.name === sheet);
  for (const { type, part } of listed && formulas ? relationsOf(pack, listed.part) : []) {
    if (type !== "table") continue;
    const root = partXml(pack, part);
    const { headers, name: named } = tableOf(root, part);
    if (named !== name) continue;
    const xml = pack.text(part);
    const columns = childrenOf(childOf(root, "tableColumns"), "tableColumn");
    const edits = columns.flatMap((column, at) =>
      withFormula(xml, column, formulas?.get(headers[at] ?? "")),
    );
    if (edits.length > 0) pack.put(part, edited(xml, edits));
  }
}

function withFormula(xml: string, column: XmlElement, formula: string | undefined): Edit[] {
  const there = childOf(column, "calculatedColumnFormula");
  if (formula === undefined || there?.text === formula || isOn(there, "array")) return [];
  const tag = `${column.prefix}calculatedColumnFormula`;
  const text = `<${tag}>${elementText(formula)}</${tag}>`;
  return [
    there
      ? { from: there.start, to: there.end, text }
      : column.children.length > 0
        ? { from: column.inner, to: column.inner, text }
        : appendTo(xml, column, text),
  ];
}
