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
    name: "a panel whose name looks the same, in letters of two alphabets",
    spoil: (book) => book.set(CONTACT, 3, "Panel", "=\u041a0002"),
    table: CONTACT,
    row: 3,
    header: "Panel",
    weight: "stop",
    says: /whose "Panel" is =K0002; restore the name\. To the eye the names are the same: "\u041a" is a letter of another alphabet/,
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
    "spaces that nobody sees",
    (book) => {
      book.set(CONTACT, 3, "Panel", " =K0002\u00a0");
      book.set(CONTACT, 4, "Part", "Breaker  Q0 ");
      book.set(CONTACT, 5, "Pole", "L3\u200b");
    },
  ],
  [
    "a row added by the project",
    (book) => {
      book.copyRow(CONTACT, 4);
      book.set(CONTACT, cellOf(book, CONTACT, 0, "Panel").rowCount - 1, "Panel", "=K0099");
    },
  ],
]);
