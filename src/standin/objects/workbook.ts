import { addSheet, type StandInBook } from "../book";
import { type HostObject, hostObject, properties } from "../hostObject";
import { customXmlParts } from "./customXmlParts";
import { nameCollection } from "./names";
import { tableCollection } from "./table";
import { worksheetCollection } from "./worksheet";

/** The root of every object path. */
export const workbookObject = (book: StandInBook): HostObject =>
  hostObject({
    type: "Workbook",
    go: {
      worksheets: () => worksheetCollection(book, (name) => addSheet(book, name)),
      tables: () =>
        tableCollection(book, () =>
          book.sheets.flatMap((sheet) => sheet.tables.map((table) => ({ sheet, table }))),
        ),
      names: () => nameCollection(book),
      customXmlParts: () => customXmlParts(book),
      // Formulas are worked out after each batch in any case.
      application: () =>
        hostObject({
          type: "Application",
          call: { suspendApiCalculationUntilNextSync: () => null },
        }),
      protection: () =>
        hostObject({
          type: "WorkbookProtection",
          get: { protected: () => book.structureProtected },
        }),
      properties: () =>
        hostObject({
          type: "DocumentProperties",
          ...properties(
            ["title"],
            (name) => book.properties[name] ?? "",
            (name, value) => {
              book.properties[name] = value;
            },
          ),
        }),
    },
  });
