import { daySerial } from "../../../src/quantities/dates";
import { finds, keepsQuiet, TORQUE } from "../support";

finds("date-swapped", [
  {
    name: "day and month exchanged",
    spoil: (book) => book.set(TORQUE, 0, "Date", daySerial("2026-04-11")),
    table: TORQUE,
    row: 0,
    header: "Date",
    weight: "query",
    says: /dated 2026-04-11, away from the table's others .* with day and month exchanged it is 2026-11-04/,
  },
]);

keepsQuiet("date-swapped", [
  [
    "a date that stands apart whichever way it is read",
    (book) => book.set(TORQUE, 0, "Date", daySerial("2026-02-03")),
  ],
  ["a day after the twelfth", (book) => book.set(TORQUE, 0, "Date", daySerial("2026-04-20"))],
  [
    "a second row of that day",
    (book) => {
      book.set(TORQUE, 0, "Date", daySerial("2026-04-11"));
      book.set(TORQUE, 1, "Date", daySerial("2026-04-11"));
    },
  ],
]);
