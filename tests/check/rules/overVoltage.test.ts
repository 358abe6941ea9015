import { finds, keepsQuiet, WITHSTAND } from "../support";

finds("over-voltage", [
  {
    name: "a withstand test above the required voltage",
    spoil: (book) => book.set(WITHSTAND, 1, "Applied kV", 28),
    table: WITHSTAND,
    row: 1,
    header: "Applied kV",
    weight: "query",
    says: /28 kV was applied; required is 27 kV/,
  },
]);

keepsQuiet("over-voltage", [
  ["within the tolerance", (book) => book.set(WITHSTAND, 1, "Applied kV", 27.2)],
  ["too low: said by another rule", (book) => book.set(WITHSTAND, 1, "Applied kV", 20)],
]);
