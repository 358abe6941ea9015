import { cellOf, finds, INSULATION, keepsQuiet } from "../support";

finds("fallen-after", [
  {
    name: "insulation after the withstand test below half of that before",
    spoil: (book) => {
      const half = cellOf(book, INSULATION, 0, "Stage").rowCount / 2;
      book.set(INSULATION, 2, "R 1 min MΩ", 300_000);
      book.set(INSULATION, half + 2, "R 1 min MΩ", 40_000);
    },
    table: INSULATION,
    row: 26,
    header: "R corrected MΩ",
    weight: "query",
    says: /after the withstand test, .* before it; a fall below half asks for an explanation/,
  },
]);

finds("fallen-after", [
  {
    name: "the same where the panel's name has a space behind it that nobody sees",
    spoil: (book) => {
      const half = cellOf(book, INSULATION, 0, "Stage").rowCount / 2;
      book.set(INSULATION, 2, "R 1 min MΩ", 300_000);
      book.set(INSULATION, half + 2, "R 1 min MΩ", 40_000);
      const { value } = cellOf(book, INSULATION, half + 2, "Panel or section");
      book.set(INSULATION, half + 2, "Panel or section", `${value} `);
    },
    table: INSULATION,
    row: 26,
    header: "R corrected MΩ",
    weight: "query",
    says: /after the withstand test/,
  },
]);

keepsQuiet("fallen-after", [
  [
    "ten times the minimum and more",
    (book) => {
      const half = cellOf(book, INSULATION, 0, "Stage").rowCount / 2;
      book.set(INSULATION, 2, "R 1 min MΩ", 300_000);
      book.set(INSULATION, half + 2, "R 1 min MΩ", 140_000);
      book.set(INSULATION, half + 2, "Temperature °C", 20);
    },
  ],
  [
    "no reading before",
    (book) => {
      const half = cellOf(book, INSULATION, 0, "Stage").rowCount / 2;
      book.set(INSULATION, 2, "R 1 min MΩ", null);
      book.set(INSULATION, half + 2, "R 1 min MΩ", 40_000);
    },
  ],
]);
