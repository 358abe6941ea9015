import { expect, test } from "vitest";
import type { MemoryBook } from "../../support/memoryBook";
import {
  CONTACT,
  cellOf,
  finds,
  keepsQuiet,
  ofRule,
  rowOf,
  soundlyEquipped,
  TORQUE,
} from "../support";

const PROTECTION = "GearProtection";
const FUNCTION = "GearFunction";
/** The first row of a relay's injection, and its trip among the functions. */
const injected = (book: MemoryBook) => rowOf(book, PROTECTION, "=K0001", "F1 51");
const trips = (book: MemoryBook) =>
  rowOf(book, FUNCTION, "=K0001", "Relay F1 trips its breaker and is shown");
const dayOf = (book: MemoryBook, table: string, row: number) =>
  Number(cellOf(book, table, row, "Date").value);

finds("before-predecessor", [
  {
    name: "contacts measured before the joints were tightened",
    spoil: (book) => book.set(CONTACT, 0, "Date", 46_325),
    table: CONTACT,
    row: 0,
    header: "Date",
    weight: "query",
    says: /dated 2026-10-30, before "Torque of bolted joints" of .*, which must come first/,
  },
  {
    name: "a relay's trip tried before it was injected",
    spoil: (book) =>
      book.set(PROTECTION, injected(book), "Date", dayOf(book, FUNCTION, trips(book)) + 1),
    table: FUNCTION,
    row: trips(soundlyEquipped()),
    header: "Date",
    weight: "query",
    says: /dated .*, before "Protection/,
    book: soundlyEquipped,
  },
]);

keepsQuiet("before-predecessor", [
  ["the very day", (book) => book.set(CONTACT, 0, "Date", cellOf(book, TORQUE, 0, "Date").value)],
  ["no date: said by another rule", (book) => book.set(CONTACT, 0, "Date", null)],
]);

test("what all functions of a panel are dated before is told once", () => {
  const book = soundlyEquipped();
  const early = dayOf(book, FUNCTION, 0) - 20;
  const { rowCount } = cellOf(book, FUNCTION, 0, "Date");
  for (let row = 0; row < rowCount; row++)
    if (cellOf(book, FUNCTION, row, "Panel or lineup").value === "=K0001")
      book.set(FUNCTION, row, "Date", early);
  const wiring = ofRule(book.snapshot, "before-predecessor").filter(({ message }) =>
    message.includes("ontrol"),
  );
  expect(wiring).toHaveLength(1);
  expect(wiring[0]?.message).toMatch(/The same applies to \d+ more rows of the table/);
});
