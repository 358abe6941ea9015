import { finds, INSULATION, keepsQuiet } from "../support";

finds("number-as-text", [
  {
    name: "a number that stands as text",
    spoil: (book) => book.set(INSULATION, 2, "R 1 min MΩ", "150000"),
    table: INSULATION,
    row: 2,
    header: "R 1 min MΩ",
    // It reads as one number, and is judged by it.
    weight: "note",
    says: /holds the text "150000", not a number; type it again/,
  },
  {
    name: "one that reads two ways",
    spoil: (book) => book.set(INSULATION, 2, "R 1 min MΩ", "150,000"),
    table: INSULATION,
    row: 2,
    header: "R 1 min MΩ",
    weight: "query",
    says: /holds the text "150,000", not a number; type it again/,
  },
]);

keepsQuiet("number-as-text", [
  ["a reading with its unit", (book) => book.set(INSULATION, 2, "R 1 min MΩ", "150 GΩ")],
  ["a bound", (book) => book.set(INSULATION, 2, "R 1 min MΩ", "> 2 TΩ")],
]);
