import { CONTACT, finds, INSULATION, keepsQuiet } from "../support";

finds("error-value", [
  {
    name: "a reference that is gone",
    spoil: (book) => book.set(INSULATION, 2, "R corrected MΩ", "#REF!"),
    table: INSULATION,
    row: 2,
    header: "R corrected MΩ",
    weight: "stop",
    says: /holds the error #REF!; correct the cells it is calculated from/,
  },
  {
    name: "an error in a reading",
    spoil: (book) => book.set(CONTACT, 0, "R µΩ", "#N/A"),
    table: CONTACT,
    row: 0,
    header: "R µΩ",
    weight: "stop",
    says: /holds the error #N\/A/,
  },
]);

keepsQuiet("error-value", [
  ["text that only begins with #", (book) => book.set(CONTACT, 0, "Remarks", "#4 of the list")],
]);
