import { finds, keepsQuiet, WITHSTAND } from "../support";

finds("unknown-word", [
  {
    name: "a word of no list",
    spoil: (book) => book.set(WITHSTAND, 0, "Discharge", "perhaps"),
    table: WITHSTAND,
    row: 0,
    header: "Discharge",
    weight: "query",
    says: /"Discharge" is "perhaps"; answer it by/,
  },
]);

keepsQuiet("unknown-word", [
  ["a word in small letters", (book) => book.set(WITHSTAND, 0, "Discharge", "no")],
  ["an error value: said by another rule", (book) => book.set(WITHSTAND, 0, "Discharge", "#N/A")],
]);
