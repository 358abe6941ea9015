import type { MemoryBook } from "../../support/memoryBook";
import { CONTACT, cellOf, finds, keepsQuiet } from "../support";

/** So many contacts in the order of their rows, from the second on, each of them more than the one before. */
const stepped = (count: number, stepOf: (at: number) => number) => (book: MemoryBook) => {
  let value = 28.4;
  for (let at = 0; at < count; at++) {
    book.set(CONTACT, 1 + at, "R µΩ", Number(value.toFixed(1)));
    value += stepOf(at);
  }
};

finds("even-steps", [
  {
    name: "seven contacts of two panels, each 0.3 µΩ above the one before",
    spoil: stepped(7, () => 0.3),
    table: CONTACT,
    row: 1,
    header: "R µΩ",
    weight: "query",
    says: /"R µΩ" goes on by 0\.3 in each of 7 rows, from here on\. .*Were they read\?/,
  },
]);

keepsQuiet("even-steps", [
  ["four of them", stepped(4, () => 0.3)],
  ["steps that differ", stepped(7, (at) => (at % 3 === 0 ? 0.4 : 0.3))],
  [
    "one reading at all",
    (book) => {
      const { rowCount } = cellOf(book, CONTACT, 0, "R µΩ");
      for (let row = 0; row < rowCount; row++) book.set(CONTACT, row, "R µΩ", 30.1);
    },
  ],
]);
