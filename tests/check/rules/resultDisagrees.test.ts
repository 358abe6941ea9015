import { CONTACT, finds, INSULATION, keepsQuiet } from "../support";

finds("result-disagrees", [
  {
    name: "a result typed over with another",
    spoil: (book) => book.set(CONTACT, 0, "Result", "Fail"),
    table: CONTACT,
    row: 0,
    header: "Result",
    weight: "stop",
    says: /"Result" shows Fail; calculated from the row's entries it is Pass/,
  },
  {
    name: "an intermediate value typed over",
    spoil: (book) => book.set(INSULATION, 2, "R corrected MΩ", 1),
    table: INSULATION,
    row: 2,
    header: "R corrected MΩ",
    weight: "stop",
    says: /"R corrected MΩ" shows 1;/,
  },
]);

keepsQuiet("result-disagrees", [
  ["the same value", (book) => book.set(CONTACT, 0, "Result", "Pass")],
  ["a table that was never calculated", (book) => book.forget()],
  ["an error: said by another rule", (book) => book.set(CONTACT, 0, "Result", "#NAME?")],
]);
