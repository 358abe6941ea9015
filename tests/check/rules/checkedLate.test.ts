import { finds, keepsQuiet } from "../support";

const INSPECTION = "GearInspection";
const DOCUMENTS = "GearDocuments";
/** After all tests of the sound workbook. */
const LATE = 46_345;

finds("checked-late", [
  {
    name: "procedures and calibration reviewed when all was tested",
    spoil: (book) => book.set(INSPECTION, 0, "Held on", LATE),
    table: INSPECTION,
    row: 0,
    header: "Held on",
    weight: "query",
    says: /looked at on 2026-11-19, after the first "[^"]+" of .*which relies on it/,
  },
  {
    name: "a drawing's revision looked at when all was tested",
    spoil: (book) => book.set(DOCUMENTS, 1, "Date", LATE),
    table: DOCUMENTS,
    row: 1,
    header: "Date",
    weight: "query",
    says: /looked at on 2026-11-19/,
  },
]);

keepsQuiet("checked-late", [
  [
    "a drawing whose remarks say what was looked at before",
    (book) => {
      book.set(DOCUMENTS, 1, "Date", LATE);
      book.set(DOCUMENTS, 1, "Remarks", "rev A looked at on 8 October; the same");
    },
  ],
  [
    "the same revision looked at before",
    (book) =>
      book.addRow(DOCUMENTS, {
        For: "Lineup",
        Document: "INV-1",
        "Latest approved revision": "A",
        "Revision on site": "A",
        Date: LATE,
        "Checked by": "A. N. Other",
        "Is the latest": "OK",
        Result: "Pass",
      }),
  ],
  ["a witness point held late", (book) => book.set(INSPECTION, 1, "Held on", LATE)],
]);
