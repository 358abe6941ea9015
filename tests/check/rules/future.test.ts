import { CONTACT, finds, keepsQuiet, TODAY } from "../support";

finds("future-date", [
  {
    name: "a date yet to come",
    spoil: (book) => book.set(CONTACT, 1, "Date", TODAY + 3),
    table: CONTACT,
    row: 1,
    header: "Date",
    weight: "query",
    says: /dated 2026-11-27, which is in the future/,
  },
]);

keepsQuiet("future-date", [
  [
    "the day of the check itself, in the evening",
    (book) => book.set(CONTACT, 1, "Date", TODAY + 0.9),
  ],
]);
