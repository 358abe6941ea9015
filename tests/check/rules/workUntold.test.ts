import { CONTACT, cellOf, type Fault, finds, keepsQuiet } from "../support";

const REMARKS = "Remarks";
/** A remark beside the last contact, which was measured five days after all other records of its sort. */
const noted =
  (remark: string, day = 46_349): Fault["spoil"] =>
  (book) => {
    book.set(CONTACT, 0, "Date", day);
    book.set(CONTACT, 0, REMARKS, remark);
  };

finds("work-untold", [
  {
    name: "a joint remade after the tests",
    spoil: noted("bus joint opened and remade"),
    table: CONTACT,
    row: 0,
    header: REMARKS,
    weight: "query",
    says: /tells of work \("bus joint opened and remade"\), after "/,
  },
  {
    name: "a part exchanged, in German",
    spoil: noted("Kontaktarm ausgetauscht"),
    table: CONTACT,
    row: 0,
    header: REMARKS,
    weight: "query",
    says: /Enter it in the sheet Repairs/,
  },
]);

keepsQuiet("work-untold", [
  ["what was not done", noted("arm worn, not replaced")],
  ["leads of the instrument", noted("test leads replaced")],
  ["work before any test", noted("arm replaced on site", 46_300)],
  [
    "a remark of nothing",
    (book) => book.set(CONTACT, 0, REMARKS, String(cellOf(book, CONTACT, 0, "Part").value ?? "")),
  ],
]);
