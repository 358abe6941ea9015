import { addSheet, type StandInBook } from "../book";
import { badArgument, type HostObject, hostObject, properties } from "../hostObject";
import { customXmlParts } from "./customXmlParts";
import { nameCollection } from "./names";
import { rangeObject } from "./range";
import { tableCollection } from "./table";
import { worksheetCollection } from "./worksheet";

/** What is selected; the first cell of the first sheet where nothing is yet. */
const selectedRange = (book: StandInBook): HostObject => {
  const sheet = book.sheets.find(({ name }) => name === book.active?.sheet) ?? book.sheets[0];
  if (!sheet) throw badArgument("the workbook has no sheet");
  return rangeObject(book, sheet, book.active?.area ?? { top: 0, left: 0, bottom: 0, right: 0 });
};

/** The root of every object path. */
export const workbookObject = (book: StandInBook, calculate: () => void = () => {}): HostObject =>
  hostObject({
    type: "Workbook",
    call: { getSelectedRange: () => selectedRange(book) },
    go: {
      worksheets: () => worksheetCollection(book, (name) => addSheet(book, name)),
      tables: () =>
        tableCollection(book, () =>
          book.sheets.flatMap((sheet) => sheet.tables.map((table) => ({ sheet, table }))),
        ),
      names: () => nameCollection(book),
      customXmlParts: () => customXmlParts(book),
      // Formulas are worked out after each batch in any case, unless by hand.
      application: () =>
        hostObject({
          type: "Application",
          get: { calculationMode: () => (book.isManual ? "Manual" : "Automatic") },
          call: { suspendApiCalculationUntilNextSync: () => null, calculate },
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
