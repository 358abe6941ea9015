import { CONTACT, cellOf, finds, INSULATION, keepsQuiet, WITHSTAND } from "../support";

finds("given-differs", [
  {
    name: "a rated voltage of a row changed",
    spoil: (book) => book.set(WITHSTAND, 0, "Rated kV", 7.2),
    table: WITHSTAND,
    row: 0,
    header: "Rated kV",
    weight: "stop",
    says: /"Rated kV" is 7.2; the lineup gives 15/,
  },
]);

keepsQuiet("given-differs", [
  [
    "a source: said by another rule",
    (book) => book.set(INSULATION, 2, "Sources of limits", "the maker says so"),
  ],
  [
    "rows that the lineup does not need",
    (book) => {
      book.copyRow(CONTACT, 4);
      const last = cellOf(book, CONTACT, 0, "Panel").rowCount - 1;
      book.set(CONTACT, last, "Panel", "=K0099");
      book.set(CONTACT, last, "Rated A", 1);
    },
  ],
]);
