import { CONTACT, finds, INSULATION, keepsQuiet } from "../support";

finds("unreadable", [
  {
    name: "a reading that is a remark",
    spoil: (book) => book.set(INSULATION, 2, "R 1 min MΩ", "see note"),
    table: INSULATION,
    row: 2,
    header: "R 1 min MΩ",
    weight: "query",
    says: /"R 1 min MΩ" cannot be read: .*see note/,
  },
  {
    name: "a date typed as text",
    spoil: (book) => book.set(CONTACT, 1, "Date", "05/11/2026"),
    table: CONTACT,
    row: 1,
    header: "Date",
    weight: "query",
    says: /is text, not a date; type it as 2026-11-25/,
  },
]);

keepsQuiet("unreadable", [
  ["a reading with its unit", (book) => book.set(INSULATION, 2, "R 1 min MΩ", "150 GΩ")],
  ["a bound", (book) => book.set(INSULATION, 2, "R 1 min MΩ", "> 2 TΩ")],
  [
    "a day as text that everybody reads alike",
    (book) => book.set(CONTACT, 1, "Date", "2026-11-12"),
  ],
]);
