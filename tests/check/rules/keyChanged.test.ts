import { CONTACT, cellOf, finds, keepsQuiet } from "../support";

finds("key-changed", [
  {
    name: "a panel renamed",
    spoil: (book) => book.set(CONTACT, 3, "Panel", "=K0009"),
    table: CONTACT,
    row: 3,
    header: "Panel",
    weight: "stop",
    says: /the workbook lacks the one whose "Panel" is =K0002; restore the name/,
  },
  {
    name: "a pole renamed",
    spoil: (book) => book.set(CONTACT, 3, "Pole", "L9"),
    table: CONTACT,
    row: 3,
    header: "Pole",
    weight: "stop",
    says: /whose "Pole" is L1/,
  },
  {
    name: "a row with readings and no name",
    spoil: (book) => {
      book.set(CONTACT, 3, "Panel", null);
      book.set(CONTACT, 3, "Part", null);
      book.set(CONTACT, 3, "Pole", null);
    },
    table: CONTACT,
    row: 3,
    header: "Panel",
    weight: "stop",
    says: /has no name; restore it/,
  },
]);

keepsQuiet("key-changed", [
  [
    "a row added by the project",
    (book) => {
      book.copyRow(CONTACT, 4);
      book.set(CONTACT, cellOf(book, CONTACT, 0, "Panel").rowCount - 1, "Panel", "=K0099");
    },
  ],
]);
