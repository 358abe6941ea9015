import { CONTACT, cellOf, finds, INSULATION, keepsQuiet, soundOf } from "../support";

finds("mixed-units", [
  {
    name: "MΩ written for GΩ",
    spoil: (book) =>
      book.set(
        INSULATION,
        8,
        "R 1 min MΩ",
        Number(cellOf(book, INSULATION, 8, "R 1 min MΩ").value) / 1000,
      ),
    table: INSULATION,
    row: 8,
    header: "R 1 min MΩ",
    weight: "query",
    says: /is 0\.00\d+ times .* the middle of \d+ similar readings .*Was the wrong unit prefix recorded/,
  },
  {
    name: "mΩ written for µΩ",
    spoil: (book) => book.set(CONTACT, 4, "R µΩ", 0.032),
    table: CONTACT,
    row: 4,
    header: "R µΩ",
    weight: "query",
    says: /Was the wrong unit prefix recorded/,
  },
]);

keepsQuiet("mixed-units", [
  ["ten times as much: said by another rule", (book) => book.set(CONTACT, 4, "R µΩ", 320)],
  ["few readings to compare with", (book) => book.set(CONTACT, 1, "R µΩ", 0.032), () => soundOf(1)],
]);
