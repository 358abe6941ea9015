import { type Area, areaAddress, cellCount, overlap, readArea } from "../../sheets/cells/area";
import { EXCEL_LIMITS } from "../../sheets/plan/excelLimits";
import { isNumberFormat } from "../../sheets/plan/numberFormat";
import { bodyRows, boxAt, lookAt, putBox, type Sheet, type StandInBook, tableAt } from "../book";
import { deleteRows } from "../edits";
import { entered } from "../entered";
import { badArgument, denied, HostError, type HostObject, hostObject } from "../hostObject";
import { conditionalFormats } from "./conditionalFormats";
import { clearLook, copyLook } from "./copyLook";
import { dataValidation } from "./dataValidation";
import { formatObject, guard, locked } from "./format";

const MAX_CELLS = EXCEL_LIMITS.rangeCells.most;
/** More merged areas the published reference says are not given of one range. */
const MAX_MERGES = 512;

/** One rectangle of cells. */
export function rangeObject(book: StandInBook, sheet: Sheet, given: Area): HostObject {
  // Of its own: a range that is kept moves with its cells.
  const area = { ...given };
  return hostObject({
    type: "Range",
    keep: () => void sheet.kept.add(area),
    isGone: () => !book.sheets.includes(sheet),
    get: {
      address: () => `${sheet.name}!${areaAddress(area)}`,
      rowIndex: () => area.top,
      columnIndex: () => area.left,
      rowCount: () => sizeOf(area).height,
      columnCount: () => sizeOf(area).width,
      values: grid(area, (row, column) => boxAt(sheet, row, column)?.value ?? ""),
      formulas: grid(area, (row, column) => {
        const box = boxAt(sheet, row, column);
        return box?.formula === undefined ? (box?.value ?? "") : `=${box.formula}`;
      }),
      rowHidden: () => {
        const hidden = rowsOf(area).filter((row) => sheet.hiddenRows.has(row)).length;
        return hidden === 0 ? false : hidden === sizeOf(area).height ? true : null;
      },
      columnHidden: () => {
        const { width } = sizeOf(area);
        const columns = Array.from({ length: width }, (_, at) => area.left + at);
        const hidden = columns.filter((column) => sheet.hiddenColumns.has(column)).length;
        return hidden === 0 ? false : hidden === width ? true : null;
      },
      numberFormat: grid(
        area,
        (row, column) => lookAt(sheet, row, column, "numberFormat") ?? "General",
      ),
    },
    set: {
      values: (value) => setContent(book, sheet, area, "values", value),
      formulas: (value) => setContent(book, sheet, area, "formulas", value),
      numberFormat: (value) => setNumberFormat(sheet, area, value),
    },
    go: {
      format: () => formatObject(sheet, [area]),
      conditionalFormats: () => conditionalFormats(book, sheet, [area]),
      dataValidation: () => dataValidation(sheet, [area]),
    },
    call: rangeCalls(book, sheet, area),
  });
}

/** @throws {HostError} for a range that was kept while its cells were taken out */
const sizeOf = ({ top, left, bottom, right }: Area) => {
  if (bottom < top || right < left)
    throw new HostError(
      "InvalidReference",
      "This reference is not valid for the current operation.",
    );
  return { height: bottom - top + 1, width: right - left + 1 };
};

/** What a range's methods do. */
const rangeCalls = (book: StandInBook, sheet: Sheet, area: Area): HostObject["call"] => {
  const part = (row: number, column: number, rows: number, columns: number) => {
    if (row < 0 || column < 0 || rows < 1 || columns < 1)
      throw badArgument("the range would be outside the sheet");
    const [top, left] = [area.top + row, area.left + column];
    return rangeObject(book, sheet, {
      top,
      left,
      bottom: top + rows - 1,
      right: left + columns - 1,
    });
  };
  return {
    getCell: (row: number, column: number) => part(row, column, 1, 1),
    getResizedRange: (rows: number, columns: number) => {
      const { height, width } = sizeOf(area);
      return part(0, 0, height + rows, width + columns);
    },
    getBoundingRect: (other: HostObject) => rangeObject(book, sheet, bounding(area, areaOf(other))),
    // The client asks this before it cuts a large grid into pieces.
    _ValidateArraySize: (rows: number, columns: number) => {
      const { height, width } = sizeOf(area);
      if (rows !== height || columns !== width) throw badArgument("the grid has another size");
    },
    getRow: (row: number) => part(row, 0, 1, sizeOf(area).width),
    getColumn: (column: number) => part(0, column, sizeOf(area).height, 1),
    getSpecialCellsOrNullObject: (type: string) => {
      if (type !== "Visible") throw badArgument("the stand-in knows visible cells alone");
      const shown = rowsOf(area).filter((row) => !sheet.hiddenRows.has(row));
      const areas = shown.map((row) => ({ ...area, top: row, bottom: row }));
      return areas.length === 0 ? null : areasObject(book, sheet, areas);
    },
    getMergedAreasOrNullObject: () => {
      const inside = sheet.merges.filter((merge) => overlap(merge, area));
      if (inside.length > MAX_MERGES)
        throw new HostError("GeneralException", "the range has more than 512 merged areas");
      return inside.length === 0 ? null : areasObject(book, sheet, inside);
    },
    delete: (shift: string) => {
      guard(sheet);
      const { table } =
        sheet.tables
          .map((table) => ({ table, ...bodyRows(table) }))
          .find(
            ({ table, first, last }) =>
              table.area.left === area.left &&
              table.area.right === area.right &&
              first < area.top &&
              area.bottom <= last,
          ) ?? {};
      const isBeside = ({ area: other }: { area: Area }) =>
        other.bottom >= area.top && (other.left > area.right || other.right < area.left);
      if (shift !== "Up" || !table || sheet.tables.some(isBeside))
        throw badArgument("the stand-in takes out whole rows of a table that stands alone");
      deleteRows(book, sheet, area.top, sizeOf(area).height);
    },
    copyFrom: (source: HostObject, what: string) => {
      guard(sheet);
      if (what !== "Formats") throw badArgument("the stand-in copies looks alone");
      copyLook(sheet, areaOf(source), area);
    },
    clear: (what: string) => {
      guard(sheet);
      if (what !== "All") throw badArgument("the stand-in clears content and look together");
      fill(area, "clear", "", (row, column) => putBox(book, sheet, row, column));
      clearLook(sheet, area);
    },
    select: () => {
      book.active = { sheet: sheet.name, area };
    },
    merge: () => {
      guard(sheet);
      sheet.merges = [...sheet.merges.filter(({ top }) => top !== area.top), { ...area }];
    },
  };
};

/** Reads every cell of an area, as rows of columns. */
const grid = (area: Area, read: (row: number, column: number) => unknown) => () => {
  if (cellCount(area) > MAX_CELLS)
    throw new HostError("ResponsePayloadSizeLimitExceeded", "the range has too many cells");
  const { height, width } = sizeOf(area);
  return Array.from({ length: height }, (_, row) =>
    Array.from({ length: width }, (_, column) => read(area.top + row, area.left + column)),
  );
};

/** Writes a value to every cell of an area, or a grid of that size; a null in it leaves its cell alone. */
function fill(
  area: Area,
  name: string,
  value: unknown,
  write: (row: number, column: number, value: unknown) => void,
): void {
  if (value === null) throw badArgument(`${name} is null`);
  const { height, width } = sizeOf(area);
  if (Array.isArray(value) && !isOfSize(value, height, width))
    throw badArgument(
      `The number of rows or columns in the input array doesn't match the size or dimensions of the range (${name}).`,
    );
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const cell = Array.isArray(value) ? value[row][column] : value;
      if (cell !== null) write(area.top + row, area.left + column, cell);
    }
}

const isOfSize = (rows: readonly unknown[], height: number, width: number): boolean =>
  rows.length === height && rows.every((row) => Array.isArray(row) && row.length === width);

function setContent(
  book: StandInBook,
  sheet: Sheet,
  area: Area,
  name: string,
  value: unknown,
): void {
  if (sheet.protected && locked(sheet, area) !== false) throw denied(`the sheet ${sheet.name}`);
  fill(area, name, value, (row, column, cell) => {
    refuseTooLong(cell);
    if (sheet.merges.some((merge) => insideMerge(merge, row, column))) return;
    putBox(book, sheet, row, column, entered(cell, tableAt(sheet, row, column)?.name));
  });
}

/** @throws {HostError} for a text or a formula that no cell takes */
export function refuseTooLong(value: unknown): void {
  const text = typeof value === "string" ? value : "";
  const isFormula = text.startsWith("=");
  const { most } = isFormula ? EXCEL_LIMITS.formula : EXCEL_LIMITS.cellText;
  // The apostrophe that keeps it text is no part of it.
  if (text.length - (text.startsWith("'") ? 1 : 0) > most)
    throw badArgument(`${isFormula ? "a formula" : "a text"} has more than ${most} characters`);
}

function setNumberFormat(sheet: Sheet, area: Area, value: unknown): void {
  guard(sheet);
  const look = (of: Area, format: unknown) => {
    if (!isNumberFormat(String(format)))
      throw badArgument(`${JSON.stringify(format)} is no number format`);
    sheet.looks.push({ area: of, property: "numberFormat", value: format });
  };
  if (Array.isArray(value))
    fill(area, "numberFormat", value, (row, column, format) =>
      look({ top: row, left: column, bottom: row, right: column }, format),
    );
  else look(area, value);
}

const rowsOf = ({ top, bottom }: Area) =>
  Array.from({ length: bottom - top + 1 }, (_, at) => top + at);

/** The area of a range that was given as an argument. */
export const areaOf = ({ get }: HostObject): Area => readArea(String(get?.address?.())) as Area;

const bounding = (one: Area, other: Area): Area => ({
  top: Math.min(one.top, other.top),
  left: Math.min(one.left, other.left),
  bottom: Math.max(one.bottom, other.bottom),
  right: Math.max(one.right, other.right),
});

const insideMerge = (merge: Area, row: number, column: number) =>
  row >= merge.top &&
  row <= merge.bottom &&
  column >= merge.left &&
  column <= merge.right &&
  !(row === merge.top && column === merge.left);

/** Several rectangles of one sheet. */
export const areasObject = (book: StandInBook, sheet: Sheet, areas: readonly Area[]): HostObject =>
  hostObject({
    type: "RangeAreas",
    go: {
      areas: () =>
        hostObject({
          type: "RangeCollection",
          items: () => areas.map((area) => rangeObject(book, sheet, area)),
        }),
      format: () => formatObject(sheet, areas),
      conditionalFormats: () => conditionalFormats(book, sheet, areas),
      dataValidation: () => dataValidation(sheet, areas),
    },
  });
