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
]);

keepsQuiet("reading-formula", [
  ["a conversion within the cell", (book) => book.set(CONTACT, 1, "R µΩ", 30, "0.03*1000")],
]);
