import { CONTACT, finds, keepsQuiet } from "../support";

finds("instrument-unknown", [
  {
    name: "an instrument that nobody listed",
    spoil: (book) => book.set(CONTACT, 1, "Instrument", "X-9"),
    table: CONTACT,
    row: 1,
    header: "Instrument",
    weight: "query",
    says: /"X-9" is not in the table of instruments; list it/,
  },
  {
    name: "one whose Id looks like a listed one",
    spoil: (book) => book.set(CONTACT, 1, "Instrument", "\u0425-1"),
    table: CONTACT,
    row: 1,
    header: "Instrument",
    weight: "query",
    says: /To the eye the names are the same: "\u0425" is a letter of another alphabet/,
  },
  {
    name: "the same on three rows: once, at the first",
    spoil: (book) => {
      for (const row of [1, 2, 4]) book.set(CONTACT, row, "Instrument", "X-9");
    },
    table: CONTACT,
    row: 1,
    header: "Instrument",
    weight: "query",
    says: /"X-9" is not in the table of instruments.* The same applies to 2 more rows of the table, at /,
  },
]);

keepsQuiet("instrument-unknown", [
  ["capital and small letters", (book) => book.set(CONTACT, 1, "Instrument", " x-1 ")],
  ["no instrument: said by another rule", (book) => book.set(CONTACT, 1, "Instrument", null)],
]);
