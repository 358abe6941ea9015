import type { MemoryBook } from "../../support/memoryBook";
import { cellOf, finds, INSULATION, keepsQuiet, rowOf, soundOf } from "../support";

const R = "R 1 min MΩ";
const six = () => soundOf(6);
const first = (book: MemoryBook, stage: string) => rowOf(book, INSULATION, "Busbar", stage);

/** So many readings of the busbar from before the withstand test, written again after it. */
const copied = (count: number) => (book: MemoryBook) => {
  for (let at = 0; at < count; at++)
    book.set(
      INSULATION,
      first(book, "after") + at,
      R,
      cellOf(book, INSULATION, first(book, "before") + at, R).value,
    );
};

finds("after-as-before", [
  {
    name: "four of six readings copied from before the withstand test",
    spoil: copied(4),
    table: INSULATION,
    row: first(six(), "after"),
    header: R,
    weight: "query",
    says: /4 of 6 readings after the withstand test are digit for digit those before it.*once in/,
    book: six,
  },
  {
    name: "those of the busbar although longer readings stand before the test alone",
    spoil: (book) => {
      for (let at = 0; at < 6; at++)
        book.set(INSULATION, first(book, "before") + at, "R 30 s MΩ", 1000);
      copied(5)(book);
    },
    table: INSULATION,
    row: first(six(), "after"),
    header: R,
    weight: "query",
    says: /5 of 6 readings/,
    book: six,
  },
  {
    name: "two of six, which is worth a note",
    spoil: copied(2),
    table: INSULATION,
    row: first(six(), "after"),
    header: R,
    weight: "note",
    says: /2 of 6 readings/,
    book: six,
  },
]);

keepsQuiet("after-as-before", [
  ["one reading alike", copied(1), six],
  [
    "bounds, which are alike by nature",
    (book) => {
      for (const stage of ["before", "after"])
        for (let at = 0; at < 6; at++) book.set(INSULATION, first(book, stage) + at, R, "> 10 TΩ");
    },
    six,
  ],
  [
    "readings of one figure",
    (book) => {
      const { rowCount } = cellOf(book, INSULATION, 0, R);
      for (let row = 0; row < rowCount; row++)
        book.set(INSULATION, row, R, 100_000 * (1 + ((row * 7) % 3)));
      copied(4)(book);
    },
    six,
  ],
]);
