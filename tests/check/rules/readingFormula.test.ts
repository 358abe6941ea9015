import { CONTACT, finds, keepsQuiet } from "../support";

finds("reading-formula", [
  {
    name: "a reading that takes another row's",
    spoil: (book) => book.set(CONTACT, 1, "R µΩ", 30, book.at(CONTACT, 0, "R µΩ")),
    table: CONTACT,
    row: 1,
    header: "R µΩ",
    weight: "query",
    says: /is calculated by =\w+5; a reading is what the instrument showed/,
  },
  {
    name: "a reading that chance gives",
    spoil: (book) => book.set(CONTACT, 1, "R µΩ", 30, "ROUND(30+RAND(),1)"),
    table: CONTACT,
    row: 1,
    header: "R µΩ",
    weight: "query",
    says: /comes to something else each time/,
  },
  {
    name: "a day that is always the present one",
    spoil: (book) => book.set(CONTACT, 1, "Date", 46_340, "TODAY()"),
    table: CONTACT,
    row: 1,
    header: "Date",
    weight: "query",
    says: /comes to something else each time/,
  },
]);

keepsQuiet("reading-formula", [
  [
    "a day that follows from another row's",
    (book) => book.set(CONTACT, 1, "Date", 46_340, book.at(CONTACT, 0, "Date")),
  ],
  ["a conversion within the cell", (book) => book.set(CONTACT, 1, "R µΩ", 30, "0.03*1000")],
]);
