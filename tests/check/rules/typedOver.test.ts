import { CONTACT, finds, keepsQuiet } from "../support";

finds("typed-over", [
  {
    name: "a result typed over with the same",
    spoil: (book) => book.set(CONTACT, 0, "Result", "Pass"),
    table: CONTACT,
    row: 0,
    header: "Result",
    weight: "query",
    says: /a typed value in place of its formula; it agrees today and will not follow/,
  },
]);

keepsQuiet("typed-over", [
  ["another value: said by another rule", (book) => book.set(CONTACT, 0, "Result", "Fail")],
  ["a blank cell", (book) => book.set(CONTACT, 0, "Result", null)],
]);
