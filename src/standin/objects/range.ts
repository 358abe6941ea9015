import { type Area, areaAddress, cellCount, overlap, readArea } from "../../sheets/area";
import { type Book, boxAt, lookAt, putBox, type Sheet, tableAt } from "../book";
import { entered } from "../entered";
import { badArgument, denied, HostError, type HostObject, hostObject } from "../hostObject";
import { conditionalFormats } from "./conditionalFormats";
import { dataValidation } from "./dataValidation";
import { formatObject, guard, locked } from "./format";

const MOST_CELLS = 5_000_000;
/** More merged areas the published reference says are not given of one range. */
const MOST_MERGES = 512;

/** One rectangle of cells. */
export function rangeObject(book: Book, sheet: Sheet, area: Area): HostObject {
  const height = area.bottom - area.top + 1;
  const width = area.right - area.left + 1;
  const part = (row: number, column: number, rows: number, columns: number) => {
    const made = {
      top: area.top + row,
      left: area.left + column,
      bottom: area.top + row + rows - 1,
      right: area.left + column + columns - 1,
    };
    if (row < 0 || column < 0 || rows < 1 || columns < 1)
      throw badArgument("the range would be outside the sheet");
    return rangeObject(book, sheet, made);
  };
  const grid = (read: (row: number, column: number) => unknown) => () => {
    if (cellCount(area) > MOST_CELLS)
      throw new HostError("ResponsePayloadSizeLimitExceeded", "the range has too many cells");
    return Array.from({ length: height }, (_, row) =>
      Array.from({ length: width }, (_, column) => read(area.top + row, area.left + column)),
    );
  };
  const fill =
    (name: string, write: (row: number, column: number, value: unknown) => void) =>
    (value: unknown) => {
      if (value === null) throw badArgument(`${name} is null`);
      if (
        Array.isArray(value) &&
        (value.length !== height ||
          value.some((row) => !Array.isArray(row) || row.length !== width))
      )
        throw badArgument(
          `The number of rows or columns in the input array doesn't match the size or dimensions of the range (${name}).`,
        );
      for (let row = 0; row < height; row++)
        for (let column = 0; column < width; column++) {
          const one = Array.isArray(value) ? (value[row] as unknown[])[column] : value;
          if (one !== null) write(area.top + row, area.left + column, one);
        }
    };
  const put = (row: number, column: number, value: unknown) => {
    if (sheet.merges.some((merge) => insideMerge(merge, row, column))) return;
    putBox(book, sheet, row, column, entered(value, tableAt(sheet, row, column)?.name));
  };
  const content = (name: string) => {
    const write = fill(name, put);
    return (value: unknown) => {
      if (sheet.protected && locked(sheet, area) !== false) throw denied(`the sheet ${sheet.name}`);
      write(value);
    };
  };
  return hostObject({
    type: "Range",
    get: {
      address: () => `${sheet.name}!${areaAddress(area)}`,
      rowIndex: () => area.top,
      columnIndex: () => area.left,
      rowCount: () => height,
      columnCount: () => width,
      values: grid((row, column) => boxAt(sheet, row, column)?.value ?? ""),
      formulas: grid((row, column) => {
        const box = boxAt(sheet, row, column);
        return box?.formula === undefined ? (box?.value ?? "") : `=${box.formula}`;
      }),
      rowHidden: () => {
        const hidden = rowsOf(area).filter((row) => sheet.hiddenRows.has(row)).length;
        return hidden === 0 ? false : hidden === height ? true : null;
      },
      numberFormat: grid((row, column) => lookAt(sheet, row, column, "numberFormat") ?? "General"),
    },
    set: {
      values: content("values"),
      formulas: content("formulas"),
      numberFormat: (value) => {
        guard(sheet);
        if (!Array.isArray(value)) {
          sheet.looks.push({ area, property: "numberFormat", value });
          return;
        }
        fill("numberFormat", (row, column, one) =>
          sheet.looks.push({
            area: { top: row, left: column, bottom: row, right: column },
            property: "numberFormat",
            value: one,
          }),
        )(value);
      },
    },
    go: {
      format: () => formatObject(sheet, [area]),
      conditionalFormats: () => conditionalFormats(book, sheet, [area]),
      dataValidation: () => dataValidation(sheet, [area]),
    },
    call: {
      getCell: (row: number, column: number) => part(row, column, 1, 1),
      getResizedRange: (rows: number, columns: number) =>
        part(0, 0, height + rows, width + columns),
      getBoundingRect: (other: HostObject) =>
        rangeObject(book, sheet, bounding(area, areaOf(other))),
      // The client asks this before it cuts a large grid into pieces.
      _ValidateArraySize: (rows: number, columns: number) => {
        if (rows !== height || columns !== width) throw badArgument("the grid has another size");
      },
      getRow: (row: number) => part(row, 0, 1, width),
      getSpecialCellsOrNullObject: (type: string) => {
        if (type !== "Visible") throw badArgument("the stand-in knows visible cells alone");
        const shown = rowsOf(area).filter((row) => !sheet.hiddenRows.has(row));
        return shown.length === 0
          ? null
          : areasObject(
              book,
              sheet,
              shown.map((row) => ({ ...area, top: row, bottom: row })),
            );
      },
      getMergedAreasOrNullObject: () => {
        const inside = sheet.merges.filter((merge) => overlap(merge, area));
        if (inside.length > MOST_MERGES)
          throw new HostError("GeneralException", "the range has more than 512 merged areas");
        return inside.length === 0 ? null : areasObject(book, sheet, inside);
      },
      select: () => {
        book.active = { sheet: sheet.name, area };
      },
      merge: () => {
        guard(sheet);
        sheet.merges = [...sheet.merges.filter((one) => one.top !== area.top), { ...area }];
      },
    },
  });
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
export const areasObject = (book: Book, sheet: Sheet, areas: readonly Area[]): HostObject =>
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
