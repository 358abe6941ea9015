import { finds, INSULATION, keepsQuiet, soundOf, WITHSTAND } from "../support";

finds("missing-condition", [
  {
    name: "a temperature not recorded",
    spoil: (book) => book.set(INSULATION, 2, "Temperature °C", null),
    table: INSULATION,
    row: 2,
    header: "Temperature °C",
    weight: "query",
    says: /without "Temperature °C"; without it/,
  },
  {
    name: "a gauge read without the barometer",
    spoil: (book) => book.set("GearGas", 1, "Barometer kPa", null),
    table: "GearGas",
    row: 1,
    header: "Barometer kPa",
    weight: "query",
    says: /"Barometer kPa"/,
  },
  {
    name: "a withstand test to be corrected to the air, without its pressure",
    spoil: (book) => book.set(WITHSTAND, 0, "Pressure kPa", null),
    table: WITHSTAND,
    row: 0,
    header: "Pressure kPa",
    weight: "query",
    says: /"Pressure kPa"/,
    book: () => soundOf(3, { withstand: { wave: "AC", seconds: 60, gapM: 0.12 } }),
  },
]);

keepsQuiet("missing-condition", [
  [
    "air pressure where nothing is corrected to it",
    (book) => book.set(WITHSTAND, 0, "Pressure kPa", null),
  ],
  [
    "a row without a reading",
    (book) => {
      book.set(INSULATION, 2, "R 1 min MΩ", null);
      book.set(INSULATION, 2, "Temperature °C", null);
    },
  ],
]);
