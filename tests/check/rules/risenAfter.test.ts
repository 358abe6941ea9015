import type { MemoryBook } from "../../support/memoryBook";
import { cellOf, finds, INSULATION, keepsQuiet } from "../support";

const half = (book: MemoryBook) => cellOf(book, INSULATION, 0, "Stage").rowCount / 2;
const risen = (book: MemoryBook) => {
  book.set(INSULATION, 2, "R 1 min MΩ", 130_000);
  book.set(INSULATION, half(book) + 2, "R 1 min MΩ", 4_200_000);
};

finds("risen-after", [
  {
    name: "insulation after the withstand test thirty times what it was",
    spoil: risen,
    table: INSULATION,
    row: 26,
    header: "R corrected MΩ",
    weight: "query",
    says: /is 3\d times the .* before it, and the others did not rise so\. Was the lead on/,
  },
]);

keepsQuiet("risen-after", [
  [
    "where all rose alike",
    (book) => {
      for (let row = 0; row < half(book); row++) {
        book.set(INSULATION, row, "R 1 min MΩ", 130_000 + row);
        book.set(INSULATION, half(book) + row, "R 1 min MΩ", 4_200_000 + 7 * row);
      }
    },
  ],
  [
    "where the remarks say what was disconnected",
    (book) => {
      risen(book);
      book.set(INSULATION, half(book) + 2, "Remarks", "arresters disconnected");
    },
  ],
  [
    "a bound",
    (book) => {
      risen(book);
      book.set(INSULATION, half(book) + 2, "R 1 min MΩ", "> 4 TΩ");
    },
  ],
]);
