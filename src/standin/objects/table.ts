import { type Area, overlap } from "../../sheets/cells/area";
import { EXCEL_LIMITS } from "../../sheets/plan/excelLimits";
import { bodyRows, boxAt, newId, putBox, type Sheet, type StandInBook, type Table } from "../book";
import { addTableRows } from "../edits";
import { entered } from "../entered";
import { badArgument, HostError, type HostObject, hostObject } from "../hostObject";
import { guard } from "./format";
import { rangeObject, refuseTooLong } from "./range";
import { sheetIdentity } from "./sheetIdentity";

/** The tables of a workbook, or of one sheet. */
export function tableCollection(
  book: StandInBook,
  own: () => { sheet: Sheet; table: Table }[],
  place?: { sheet: Sheet; area: (given: unknown) => Area },
): HostObject {
  const find = (name: string) => {
    const found = own().find(
      ({ table }) => table.name.toLowerCase() === name.toLowerCase() || table.id === name,
    );
    return found ? tableObject(book, found.sheet, found.table) : null;
  };
  return hostObject({
    type: "TableCollection",
    items: () => own().map(({ sheet, table }) => tableObject(book, sheet, table)),
    item: (name) => find(String(name)),
    call: {
      getItemOrNullObject: (name: string) => find(name),
      ...(place
        ? {
            add: (given: unknown, hasHeaders: boolean) => {
              if (!hasHeaders) throw badArgument("the stand-in makes tables with headers only");
              return tableObject(book, place.sheet, addTable(book, place.sheet, place.area(given)));
            },
          }
        : {}),
    },
  });
}

function addTable(book: StandInBook, sheet: Sheet, area: Area): Table {
  guard(sheet);
  if (sheet.tables.some((table) => overlap(table.area, area)))
    throw badArgument("A table can't overlap another table.");
  const headers = new Set<string>();
  for (let column = area.left; column <= area.right; column++) {
    const text = String(boxAt(sheet, area.top, column)?.value ?? "").toLowerCase();
    if (text === "" || headers.has(text)) throw badArgument("a header is blank or stands twice");
    headers.add(text);
  }
  const table: Table = {
    id: newId(book),
    name: `Table${book.lastId}`,
    area: { ...area, bottom: Math.max(area.bottom, area.top + 1) },
    showTotals: false,
    properties: { style: "TableStyleMedium2" },
  };
  sheet.tables.push(table);
  return table;
}

export function tableObject(book: StandInBook, sheet: Sheet, table: Table): HostObject {
  const range = (top: number, bottom: number) =>
    rangeObject(book, sheet, { ...table.area, top, bottom });
  return hostObject({
    type: "Table",
    id: table.id,
    get: {
      id: () => table.id,
      name: () => table.name,
      showTotals: () => table.showTotals,
    },
    set: {
      name: (value) => {
        guard(sheet);
        const taken = book.sheets.some(({ tables }) =>
          tables.some(
            (other) => other !== table && other.name.toLowerCase() === String(value).toLowerCase(),
          ),
        );
        if (
          taken ||
          String(value).length > EXCEL_LIMITS.tableName.most ||
          !/^[A-Za-z_\\][\w.]*$/.test(String(value))
        )
          throw badArgument(`a table cannot be called ${value}`);
        table.name = String(value);
      },
      style: (value) => {
        guard(sheet);
        table.properties.style = value;
      },
      showBandedRows: (value) => {
        guard(sheet);
        table.properties.showBandedRows = value;
      },
    },
    go: {
      worksheet: () => sheetIdentity(sheet),
      columns: () => columnCollection(sheet, table),
      rows: () =>
        hostObject({
          type: "TableRowCollection",
          call: {
            add: (index: number | null, values: unknown[][]) => {
              guard(sheet);
              if (index !== null) throw badArgument("the stand-in adds rows at the foot only");
              const width = table.area.right - table.area.left + 1;
              if (!Array.isArray(values) || values.some((row) => row.length !== width))
                throw badArgument("the values do not have the table's width");
              return added(book, sheet, table, values);
            },
          },
        }),
    },
    call: {
      getRange: () => range(table.area.top, table.area.bottom),
      getHeaderRowRange: () => range(table.area.top, table.area.top),
      getDataBodyRange: () => range(bodyRows(table).first, bodyRows(table).last),
    },
  });
}

const columnCollection = (sheet: Sheet, { area }: Table): HostObject =>
  hostObject({
    type: "TableColumnCollection",
    items: () =>
      Array.from({ length: area.right - area.left + 1 }, (_, column) =>
        hostObject({
          type: "TableColumn",
          id: String(column + 1),
          get: { name: () => String(boxAt(sheet, area.top, area.left + column)?.value ?? "") },
        }),
      ),
  });

function added(book: StandInBook, sheet: Sheet, table: Table, values: unknown[][]): HostObject {
  const first = bodyRows(table).last + 1;
  const shifted = sheet.tables.find(
    (other) =>
      other !== table &&
      other.area.top > table.area.bottom &&
      other.area.left <= table.area.right &&
      other.area.right >= table.area.left &&
      (other.area.left < table.area.left || other.area.right > table.area.right),
  );
  if (shifted)
    throw new HostError(
      "InvalidOperation",
      "This operation isn't allowed. The operation is attempting to shift cells in a table on your worksheet.",
    );
  addTableRows(book, sheet, table, values.length);
  values.forEach((row, index) => {
    row.forEach((value, column) => {
      refuseTooLong(value);
      if (value !== null)
        putBox(book, sheet, first + index, table.area.left + column, entered(value, table.name));
    });
  });
  return hostObject({ type: "TableRow", get: { index: () => first - table.area.top - 1 } });
}
