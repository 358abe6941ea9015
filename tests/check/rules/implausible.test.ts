import type { MemoryBook } from "../../support/memoryBook";
import { CONTACT, finds, INSULATION, keepsQuiet } from "../support";

finds("implausible", [
  {
    name: "a humidity that cannot be",
    spoil: (book) => book.set(INSULATION, 2, "Humidity %", 150),
    table: INSULATION,
    row: 2,
    header: "Humidity %",
    weight: "query",
    says: /"Humidity %" is 150 .*expected 0 to 100/,
  },
  {
    name: "a test voltage with three noughts too many",
    spoil: (book) => book.set(INSULATION, 2, "Test V DC", 5_000_000),
    table: INSULATION,
    row: 2,
    header: "Test V DC",
    weight: "query",
    says: /expected \d/,
  },
  ...[980_000_000, "980 TΩ"].map((reading) => ({
    name: `an insulation resistance that no tester shows: ${reading}`,
    spoil: (book: MemoryBook) => book.set(INSULATION, 2, "R 1 min MΩ", reading),
    table: INSULATION,
    row: 2,
    header: "R 1 min MΩ",
    weight: "query" as const,
    says: /is 980,?000,?000 .*expected at most 100,?000,?000/,
  })),
  {
    name: "a number that is no day",
    spoil: (book) => book.set(CONTACT, 1, "Date", -5),
    table: CONTACT,
    row: 1,
    header: "Date",
    weight: "query",
    says: /is not a date; type it as 2026-11-25/,
  },
]);

keepsQuiet("implausible", [
  ["beyond the range of a tester", (book) => book.set(INSULATION, 2, "R 1 min MΩ", "> 20 TΩ")],
  ["the ends of what can be", (book) => book.set(INSULATION, 2, "Humidity %", 100)],
  ["text: said by another rule", (book) => book.set(INSULATION, 2, "Humidity %", "wet")],
]);
