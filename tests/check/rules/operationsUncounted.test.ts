import type { MemoryBook } from "../../support/memoryBook";
import { cellOf, finds, keepsQuiet } from "../support";

const MECHANISM = "GearMechanism";
const TIMING = "GearTiming";

/** The counter of the second breaker after its row, and how far it was to move. */
const counted = (step: number) => (book: MemoryBook) => {
  const before = Number(cellOf(book, MECHANISM, 1, "Counter before").value);
  book.set(MECHANISM, 1, "Counter after", before + step);
  book.set(MECHANISM, 1, "Operations made", step);
};

/** A further record of the first breaker a week later, its counter so many on; timed so many days after the first record. */
const later = (moved: number, timed: number) => (book: MemoryBook) => {
  const day = Number(cellOf(book, MECHANISM, 0, "Date").value);
  const after = Number(cellOf(book, MECHANISM, 0, "Counter after").value);
  book.copyRow(MECHANISM, 0);
  const row = cellOf(book, MECHANISM, 0, "Date").rowCount - 1;
  book.set(MECHANISM, row, "Mechanism", "Breaker Q0 second trip coil");
  book.set(MECHANISM, row, "Date", day + 7);
  book.set(MECHANISM, row, "Counter before", after + moved);
  book.set(MECHANISM, row, "Counter after", after + moved + 12);
  book.set(TIMING, 0, "Date", day + timed);
};

finds("operations-uncounted", [
  {
    name: "a counter that moved by less than the coils tried had to operate",
    spoil: counted(1),
    table: MECHANISM,
    row: 1,
    header: "Counter after",
    weight: "query",
    says: /moved by 1, and the coils tried in this row closed the breaker at least 2 times/,
  },
  {
    name: "a counter that stands where it was although the breaker was timed between",
    spoil: later(0, 3),
    table: MECHANISM,
    row: 3,
    header: "Counter before",
    weight: "query",
    says: /moved by 0 since the record of .*, and the breaker was closed at least once between/,
  },
]);

keepsQuiet("operations-uncounted", [
  ["as many as the coils had to operate", counted(2)],
  ["a counter that moved with the timing", later(1, 3)],
  ["timing on the day of a reading", later(0, 7)],
  ["a counter that was not read", (book) => book.set(MECHANISM, 1, "Counter after", null)],
]);
