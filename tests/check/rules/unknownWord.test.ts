import { finds, keepsQuiet, WITHSTAND } from "../support";

finds("unknown-word", [
  {
    name: "a word of no list",
    spoil: (book) => book.set(WITHSTAND, 0, "Discharge", "perhaps"),
    table: WITHSTAND,
    row: 0,
    header: "Discharge",
    weight: "query",
    says: /"Discharge" is "perhaps"; use/,
  },
  {
    name: "the same word on three rows: once, at the first",
    spoil: (book) => {
      for (const row of [0, 1, 2]) book.set(WITHSTAND, row, "Discharge", "n/k");
    },
    table: WITHSTAND,
    row: 0,
    header: "Discharge",
    weight: "query",
    says: /"Discharge" is "n\/k"; use .*\. The same applies to 2 more rows of the table, at /,
  },
]);

keepsQuiet("unknown-word", [
  ["a word in small letters", (book) => book.set(WITHSTAND, 0, "Discharge", "no")],
  ["an error value: said by another rule", (book) => book.set(WITHSTAND, 0, "Discharge", "#N/A")],
]);
