import { CONTACT, cellOf, finds, keepsQuiet, TORQUE } from "../support";

finds("before-predecessor", [
  {
    name: "contacts measured before the joints were tightened",
    spoil: (book) => book.set(CONTACT, 0, "Date", 46_325),
    table: CONTACT,
    row: 0,
    header: "Date",
    weight: "query",
    says: /dated 2026-10-30, before "Torque of bolted joints" of .*, which must come first/,
  },
]);

keepsQuiet("before-predecessor", [
  ["the very day", (book) => book.set(CONTACT, 0, "Date", cellOf(book, TORQUE, 0, "Date").value)],
  ["no date: said by another rule", (book) => book.set(CONTACT, 0, "Date", null)],
]);
