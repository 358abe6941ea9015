import { type Area, everything, readArea, readAreas } from "../../sheets/cells/area";
import { EXCEL_LIMITS } from "../../sheets/plan/excelLimits";
import type { Sheet, StandInBook } from "../book";
import {
  badArgument,
  denied,
  HostError,
  type HostObject,
  hostObject,
  isHostObject,
  properties,
} from "../hostObject";
import { guard } from "./format";
import { noteCollection } from "./notes";
import { areaOf, areasObject, rangeObject } from "./range";
import { sheetProtection } from "./sheetIdentity";
import { tableCollection } from "./table";

/** The sheets of a workbook. */
export function worksheetCollection(book: StandInBook, add: (name: string) => Sheet): HostObject {
  const find = (key: string) => {
    const sheet = book.sheets.find(
      ({ name, id }) => name.toLowerCase() === key.toLowerCase() || id === key,
    );
    return sheet ? worksheetObject(book, sheet) : null;
  };
  return hostObject({
    type: "WorksheetCollection",
    items: () => book.sheets.map((sheet) => worksheetObject(book, sheet)),
    item: (key) => find(String(key)),
    call: {
      add: (name: string) => {
        if (book.structureProtected) throw denied("the workbook's structure");
        if (find(name)) throw badArgument(`a sheet is called ${name} already`);
        if (name.length > EXCEL_LIMITS.sheetName.most || /[\\/?*[\]:]/.test(name) || name === "")
          throw badArgument(`a sheet cannot be called ${name}`);
        return worksheetObject(book, add(name));
      },
      getItemOrNullObject: (key: string) => find(key),
      _RegisterDataChangedEvent: () => void book.listening.add("changed"),
      _UnregisterDataChangedEvent: () => void book.listening.delete("changed"),
      _RegisterSelectionChangedEvent: () => void book.listening.add("selectionChanged"),
      _UnregisterSelectionChangedEvent: () => void book.listening.delete("selectionChanged"),
    },
  });
}

/** As far as a sheet holds values, or joined cells as well; its first cell where it holds none. */
function usedArea({ cells, merges }: Sheet, valuesOnly: boolean): Area {
  const area = {
    top: Number.POSITIVE_INFINITY,
    left: Number.POSITIVE_INFINITY,
    bottom: 0,
    right: 0,
  };
  cells.forEach((row, at) => {
    row?.forEach((box, column) => {
      if (!box || box.value === "" || box.value === null) return;
      area.top = Math.min(area.top, at);
      area.bottom = at;
      area.left = Math.min(area.left, column);
      area.right = Math.max(area.right, column);
    });
  });
  for (const merge of valuesOnly ? [] : merges) {
    area.top = Math.min(area.top, merge.top);
    area.bottom = Math.max(area.bottom, merge.bottom);
    area.left = Math.min(area.left, merge.left);
    area.right = Math.max(area.right, merge.right);
  }
  return area.top > area.bottom ? { top: 0, left: 0, bottom: 0, right: 0 } : area;
}

const noneOf = (type: string) => (): HostObject =>
  hostObject({ type, call: { getCount: () => 0 } });
/** What the stand-in's sheets never have. */
const DRAWN = { charts: noneOf("ChartCollection"), shapes: noneOf("ShapeCollection") };

const MARGINS = [
  "leftMargin",
  "rightMargin",
  "topMargin",
  "bottomMargin",
  "headerMargin",
  "footerMargin",
];

function refuseLongAddress({ length }: string): void {
  const { most } = EXCEL_LIMITS.address;
  if (length > most) throw badArgument(`the address has more than ${most} characters`);
}

function area(address: unknown): Area {
  if (address === null || address === undefined || address === "") return everything();
  const text = String(address);
  refuseLongAddress(text);
  const read = readArea(text);
  if (!read) throw badArgument(`${text} is no address`);
  return read;
}

const VISIBILITIES: ReadonlySet<string> = new Set(["Visible", "Hidden", "VeryHidden"]);

export function worksheetObject(book: StandInBook, sheet: Sheet): HostObject {
  const bag = (path: string, names: readonly string[]) =>
    properties(
      names,
      (name) => sheet.properties[path + name] ?? null,
      (name, value) => {
        guard(sheet);
        sheet.properties[path + name] = value;
      },
    );
  return hostObject({
    type: "Worksheet",
    id: sheet.id,
    get: {
      id: () => sheet.id,
      name: () => sheet.name,
      visibility: () => sheet.properties.visibility ?? "Visible",
      ...bag("", ["gridlines"]).get,
    },
    set: {
      ...bag("", ["gridlines"]).set,
      visibility: (value) => {
        if (book.structureProtected) throw denied("the workbook's structure");
        if (!VISIBILITIES.has(String(value))) throw badArgument(`no visibility "${value}"`);
        sheet.properties.visibility = String(value);
      },
    },
    go: {
      tables: () =>
        tableCollection(book, () => sheet.tables.map((table) => ({ sheet, table })), {
          sheet,
          area: (given) => {
            if (!isHostObject(given)) throw badArgument("the stand-in makes tables from a range");
            return areaOf(given);
          },
        }),
      protection: () => sheetProtection(sheet),
      ...DRAWN,
      comments: () => noteCollection(book, sheet, sheet.comments),
      notes: () => noteCollection(book, sheet, sheet.notes),
      freezePanes: () =>
        hostObject({
          type: "WorksheetFreezePanes",
          call: {
            freezeAt: (address: string) => {
              guard(sheet);
              sheet.frozen = area(address);
            },
          },
        }),
      pageLayout: () =>
        hostObject({
          type: "PageLayout",
          ...bag("pageLayout.", ["orientation", "paperSize", "zoom", ...MARGINS]),
          go: {
            headersFooters: () =>
              hostObject({
                type: "HeaderFooterGroup",
                go: {
                  defaultForAllPages: () =>
                    hostObject({
                      type: "HeaderFooter",
                      ...bag("pageLayout.", ["leftFooter", "centerFooter", "rightFooter"]),
                    }),
                },
              }),
          },
          call: {
            setPrintTitleRows: (address: string) => {
              guard(sheet);
              sheet.properties["pageLayout.printTitleRows"] = address;
            },
            setPrintTitleColumns: (address: string) => {
              guard(sheet);
              sheet.properties["pageLayout.printTitleColumns"] = address;
            },
          },
        }),
    },
    call: {
      getRange: (address?: string) => rangeObject(book, sheet, area(address)),
      getRanges: (addresses: string) => {
        refuseLongAddress(addresses);
        const areas = readAreas(addresses);
        if (!areas) throw badArgument(`${addresses} are no addresses`);
        return areasObject(book, sheet, areas);
      },
      getCell: (row: number, column: number) =>
        rangeObject(book, sheet, { top: row, left: column, bottom: row, right: column }),
      getUsedRange: (valuesOnly?: boolean) =>
        rangeObject(book, sheet, usedArea(sheet, valuesOnly === true)),
      delete: () => {
        if (book.structureProtected) throw denied("the workbook's structure");
        if (book.sheets.length === 1) throw badArgument("a workbook keeps at least one sheet");
        if (sheet.properties.visibility === "VeryHidden")
          throw new HostError("InvalidOperation", "A very hidden sheet cannot be deleted.");
        book.sheets.splice(book.sheets.indexOf(sheet), 1);
      },
      activate: () => {
        const top = book.active?.sheet === sheet.name ? book.active.area : undefined;
        book.active = { sheet: sheet.name, area: top ?? { top: 0, left: 0, bottom: 0, right: 0 } };
      },
    },
  });
}
