import { CONTACT, finds, INSULATION, keepsQuiet, rowOf, sound } from "../support";

const book = sound();
const one = rowOf(book, CONTACT, "=K0001", "L1");
const other = rowOf(book, CONTACT, "=K0003", "L1");
const NINE = 46_338 + 9 / 24;

finds("two-places", [
  {
    name: "one instrument on two panels at one minute",
    spoil: (book) => {
      book.set(CONTACT, one, "Date", NINE);
      book.set(CONTACT, other, "Date", NINE);
    },
    table: CONTACT,
    row: other,
    header: "Date",
    weight: "query",
    says: /X-1 tested here at 2026-11-12 09:00, and at that minute also =K0001/,
  },
]);

keepsQuiet("two-places", [
  [
    "two poles of one panel",
    (book) => {
      book.set(CONTACT, one, "Date", NINE);
      book.set(CONTACT, one + 1, "Date", NINE);
    },
  ],
  ["days without an hour", () => {}],
  [
    "two instruments of a crew",
    (book) => {
      book.set(CONTACT, one, "Date", NINE);
      book.set(CONTACT, other, "Date", NINE);
      book.set(CONTACT, other, "Instrument", "X-2");
      for (const row of [one, other]) book.set(CONTACT, row, "Tested by", "Crew 2");
    },
  ],
  [
    "the time of an export on many panels",
    (book) => {
      for (const name of ["=K0001", "=K0002", "=K0003"])
        book.set(CONTACT, rowOf(book, CONTACT, name, "L1"), "Date", NINE);
      book.set(INSULATION, 0, "Date", NINE);
      for (let row = 0; row < 30; row++) book.set(INSULATION, row, "Date", 46_340.5);
    },
  ],
]);

finds("two-places", [
  {
    name: "two insulation readings of a minute with one instrument at one minute",
    spoil: (book) => {
      for (const row of [0, 1]) book.set(INSULATION, row, "Date", NINE);
    },
    table: INSULATION,
    row: 1,
    header: "Date",
    weight: "query",
    says: /begun with .* at 2026-11-12 09:00, as was .*, and each takes a minute and more/,
  },
]);

keepsQuiet("two-places", [
  [
    "readings that were taken together, by their remarks",
    (book) => {
      for (const row of [0, 1]) {
        book.set(INSULATION, row, "Date", NINE);
        book.set(INSULATION, row, "Remarks", "two phases joined");
      }
    },
  ],
  [
    "three at one minute, which is the time of an export",
    (book) => {
      for (const row of [0, 1, 2]) book.set(INSULATION, row, "Date", NINE);
    },
  ],
]);
