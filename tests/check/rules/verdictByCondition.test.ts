import { finds, INSULATION, keepsQuiet, WITHSTAND } from "../support";

/** 3000 MΩ fails against 5000 MΩ at 20 °C (NETA table 100.1, 15 kV class) and passes corrected from 60 °C and more (table 100.14). */
finds("verdict-by-condition", [
  {
    name: "a failing insulation resistance that a temperature makes pass",
    spoil: (book) => {
      book.set(INSULATION, 4, "R 1 min MΩ", 3000);
      book.set(INSULATION, 4, "Temperature °C", 62);
    },
    table: INSULATION,
    row: 4,
    header: "Temperature °C",
    weight: "stop",
    says: /passes with "Temperature °C" of 62 °C alone; with .* the middle of .* it comes to Fail/,
  },
]);

keepsQuiet("verdict-by-condition", [
  ["a pass at any temperature", (book) => book.set(INSULATION, 4, "Temperature °C", 62)],
  [
    "a row that tells of heating",
    (book) => {
      book.set(INSULATION, 4, "R 1 min MΩ", 3000);
      book.set(INSULATION, 4, "Temperature °C", 62);
      book.set(INSULATION, 4, "Remarks", "space heater on since morning");
    },
  ],
  [
    "another instrument of that day, with no rows beside it",
    (book) => {
      book.set(INSULATION, 4, "R 1 min MΩ", 3000);
      book.set(INSULATION, 4, "Temperature °C", 62);
      book.set(INSULATION, 4, "Instrument", "X-9");
    },
  ],
  ["a day with its own spread", (book) => book.set(WITHSTAND, 2, "Air °C", 26)],
]);
