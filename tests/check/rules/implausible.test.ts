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
  ["the ends of what can be", (book) => book.set(INSULATION, 2, "Humidity %", 100)],
  ["text: said by another rule", (book) => book.set(INSULATION, 2, "Humidity %", "wet")],
]);
