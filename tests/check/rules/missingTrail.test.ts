import { CONTACT, finds, keepsQuiet } from "../support";

finds("missing-trail", [
  {
    name: "a name not recorded",
    spoil: (book) => book.set(CONTACT, 2, "Tested by", null),
    table: CONTACT,
    row: 2,
    header: "Tested by",
    weight: "query",
    says: /without "Tested by"/,
  },
  {
    name: "a counter not written down",
    spoil: (book) => book.set("GearMechanism", 1, "Counter after", null),
    table: "GearMechanism",
    row: 1,
    header: "Counter after",
    weight: "query",
    says: /without "Counter after"/,
  },
]);

keepsQuiet("missing-trail", [
  [
    "a row without a reading",
    (book) => {
      book.set(CONTACT, 2, "R µΩ", null);
      book.set(CONTACT, 2, "Tested by", null);
    },
  ],
]);
