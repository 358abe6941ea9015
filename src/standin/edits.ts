import type { CellValue } from "../records/kind";
import type { Area } from "../sheets/cells/area";
import {
  type Box,
  bodyRows,
  boxAt,
  putBox,
  type Sheet,
  type StandInBook,
  sheetNamed,
  type Table,
  tableNamed,
} from "./book";

/** Every area of a sheet that moves and grows with its rows and columns. */
const movable = (sheet: Sheet): Area[] => [
  ...sheet.looks.map(({ area }) => area),
  ...sheet.tables.map(({ area }) => area),
  ...sheet.formats.flatMap(({ areas }) => areas),
  ...sheet.validations.flatMap(({ areas }) => areas),
  ...sheet.merges,
  ...[...sheet.notes, ...sheet.comments].map(({ area }) => area),
  ...sheet.names.map(({ area }) => area),
  ...sheet.unlocked,
  ...sheet.kept,
  ...(sheet.filter ? [sheet.filter] : []),
];

/** Rows put in before a row, over the whole width of the sheet; what spans the place grows. */
export function insertRows(book: StandInBook, sheet: Sheet, before: number, count: number): void {
  for (const area of new Set(movable(sheet))) {
    if (area.top >= before) area.top += count;
    if (area.bottom >= before) area.bottom += count;
  }
  sheet.cells.splice(before, 0, ...Array.from({ length: count }, () => []));
  sheet.hiddenRows = new Set(
    [...sheet.hiddenRows].map((row) => (row >= before ? row + count : row)),
  );
  book.dirty = true;
}

/** What lies wholly in cells that are taken out goes with them. */
function dropWhole(sheet: Sheet, gone: (area: Area) => boolean): void {
  sheet.looks = sheet.looks.filter(({ area }) => !gone(area));
  sheet.tables = sheet.tables.filter(({ area }) => !gone(area));
  sheet.merges = sheet.merges.filter((area) => !gone(area));
  sheet.notes = sheet.notes.filter(({ area }) => !gone(area));
  sheet.comments = sheet.comments.filter(({ area }) => !gone(area));
  sheet.formats = sheet.formats.filter((format) => {
    format.areas = format.areas.filter((area) => !gone(area));
    return format.areas.length > 0;
  });
  sheet.validations = sheet.validations.filter(({ areas }) => !areas.every(gone));
}

/** Rows taken out over the whole width of the sheet; what lay wholly in them goes with them. */
export function deleteRows(book: StandInBook, sheet: Sheet, first: number, count: number): void {
  const end = first + count;
  const gone = (area: Area) => area.top >= first && area.bottom < end;
  dropWhole(sheet, gone);
  sheet.hiddenRows = new Set(
    [...sheet.hiddenRows].flatMap((row) => (row < first ? [row] : row < end ? [] : [row - count])),
  );
  for (const area of new Set(movable(sheet))) {
    const [top, bottom] = [area.top, area.bottom];
    area.top = top >= end ? top - count : Math.min(top, first);
    area.bottom = bottom >= end ? bottom - count : bottom >= first ? first - 1 : bottom;
  }
  sheet.cells.splice(first, count);
  book.dirty = true;
}

/**
 * Columns put in before a column, over the whole height of the sheet; what spans the place grows, and a
 * table that does gets headers of its own for them.
 */
export function insertColumns(
  book: StandInBook,
  sheet: Sheet,
  before: number,
  count: number,
): void {
  const spanning = sheet.tables.filter(({ area }) => area.left < before && area.right >= before);
  for (const area of new Set(movable(sheet))) {
    if (area.left >= before) area.left += count;
    if (area.right >= before) area.right += count;
  }
  for (const row of sheet.cells)
    if (row && row.length > before)
      row.splice(before, 0, ...new Array<Box | undefined>(count).fill(undefined));
  for (const { area } of spanning)
    for (let column = before; column < before + count; column++)
      putBox(book, sheet, area.top, column, { value: newHeader(sheet, area) });
  book.dirty = true;
}

/** Columns taken out over the whole height of the sheet; what lay wholly in them goes with them. */
export function deleteColumns(book: StandInBook, sheet: Sheet, first: number, count: number): void {
  const end = first + count;
  const gone = (area: Area) => area.left >= first && area.right < end;
  dropWhole(sheet, gone);
  for (const area of new Set(movable(sheet))) {
    const [left, right] = [area.left, area.right];
    area.left = left >= end ? left - count : Math.min(left, first);
    area.right = right >= end ? right - count : right >= first ? first - 1 : right;
  }
  for (const row of sheet.cells) row?.splice(first, count);
  book.dirty = true;
}

/** The header that Excel gives a column which is put into a table. */
function newHeader(sheet: Sheet, { top, left, right }: Area): string {
  const taken = new Set<CellValue | undefined>();
  for (let column = left; column <= right; column++) taken.add(boxAt(sheet, top, column)?.value);
  let number = 1;
  while (taken.has(`Column${number}`)) number += 1;
  return `Column${number}`;
}

/** The rows of a table put in another order; conditional formats stay where they are. */
export function sortTable(
  book: StandInBook,
  name: string,
  order: (one: readonly CellValue[], other: readonly CellValue[]) => number,
): void {
  const { sheet, table } = tableNamed(book, name);
  const { first, last } = bodyRows(table);
  const columns = Array.from(
    { length: table.area.right - table.area.left + 1 },
    (_, column) => table.area.left + column,
  );
  const rows = Array.from({ length: last - first + 1 }, (_, row): (Box | undefined)[] =>
    columns.map((column) => boxAt(sheet, first + row, column)),
  );
  const values = (row: (Box | undefined)[]) => row.map((box) => box?.value ?? null);
  rows.sort((one, other) => order(values(one), values(other)));
  rows.forEach((row, index) => {
    row.forEach((box, at) => {
      putBox(book, sheet, first + index, columns[at] as number, box);
    });
  });
}

/**
 * Blank rows at a table's foot. What stands below moves down where it is in the way; looks, conditional
 * formats and validations that reach the last row go on over the new ones.
 */
export function addTableRows(book: StandInBook, sheet: Sheet, table: Table, count: number): void {
  const { last } = bodyRows(table);
  const { left, right } = table.area;
  const below = sheet.cells
    .slice(last + 1, last + 1 + count)
    .some((row) => row?.slice(left, right + 1).some((box) => box !== undefined));
  const reaching = movable(sheet).filter(
    (area) =>
      area.bottom === last && area.top > table.area.top && area.right >= left && area.left <= right,
  );
  if (below || table.showTotals) insertRows(book, sheet, last + 1, count);
  for (const area of new Set(reaching)) area.bottom += count;
  if (table.area.bottom === last || !table.showTotals) table.area.bottom = last + count;
}

/** What the user types into a cell of a table, by row of its body and header. */
export function typeInto(
  book: StandInBook,
  name: string,
  row: number,
  header: string,
  value: CellValue,
): void {
  const { sheet, table } = tableNamed(book, name);
  for (let column = table.area.left; column <= table.area.right; column++)
    if (boxAt(sheet, table.area.top, column)?.value === header) {
      putBox(
        book,
        sheet,
        bodyRows(table).first + row,
        column,
        value === null ? undefined : { value },
      );
      return;
    }
  throw new Error(`no column ${header} in ${name}`);
}

/** A sheet under another name, as its user gives it. */
export function renameSheet(book: StandInBook, from: string, to: string): void {
  sheetNamed(book, from).name = to;
}
