import { finds, keepsQuiet, WITHSTAND } from "../support";

const INSPECTION = "GearInspection";

/** The usual points: review, busbar joints W, hold before the withstand test, withstand test W, function tests W. */
finds("inspection-off", [
  {
    name: "a witness point held before the work that it witnesses",
    spoil: (book) => book.set(INSPECTION, 3, "Held on", 46_338),
    table: INSPECTION,
    row: 3,
    header: "Held on",
    weight: "query",
    says: /held on 2026-11-12, before the first record of "Withstand/,
  },
  {
    name: "a witness point held on a day without the test",
    spoil: (book) => book.set(INSPECTION, 3, "Held on", 46_345),
    table: INSPECTION,
    row: 3,
    header: "Held on",
    weight: "query",
    says: /held on 2026-11-19, on which no record of "Withstand voltage, main circuit" was made \(2026/,
  },
  {
    name: "a point released by who made the test",
    spoil: (book) => book.set(INSPECTION, 1, "Released by", "A. N. Other"),
    table: INSPECTION,
    row: 1,
    header: "Released by",
    weight: "query",
    says: /released by A. N. Other, who also made records of "Torque/,
  },
  {
    name: "a point asked for after it was held",
    spoil: (book) => book.set(INSPECTION, 0, "Requested on", 46_325),
    table: INSPECTION,
    row: 0,
    header: "Requested on",
    weight: "query",
    says: /asked for on 2026-10-30, after it was held/,
  },
]);

keepsQuiet("inspection-off", [
  [
    "a review by who made the tests",
    (book) => book.set(INSPECTION, 0, "Released by", "A. N. Other"),
  ],
  [
    "a point that is not released",
    (book) => {
      book.set(INSPECTION, 3, "Held on", 46_320);
      book.set(INSPECTION, 3, "Released", "Not released");
    },
  ],
  ["a witness test among several days", (book) => book.set(WITHSTAND, 0, "Date", 46_341)],
  [
    "joints witnessed later, before they are covered",
    (book) => book.set(INSPECTION, 1, "Held on", 46_335),
  ],
  [
    "a hold point held before what it lets go ahead",
    (book) => book.set(INSPECTION, 2, "Held on", 46_339),
  ],
]);
