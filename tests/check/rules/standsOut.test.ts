import { CONTACT, finds, keepsQuiet } from "../support";

finds("stands-out", [
  {
    name: "a pole that stands out from its neighbours",
    spoil: (book) => book.set(CONTACT, 1, "R µΩ", 48.5),
    table: CONTACT,
    row: 1,
    header: "Above lowest",
    weight: "query",
    says: /% above the lowest of its group; more than 50 % calls for investigation/,
  },
  {
    name: "beside a pole in another unit, that one is asked about first",
    spoil: (book) => {
      book.set(CONTACT, 0, "R µΩ", 0.03);
      book.set(CONTACT, 1, "R µΩ", 30);
      book.set(CONTACT, 2, "R µΩ", null);
    },
    table: CONTACT,
    row: 1,
    header: "Above lowest",
    weight: "query",
    says: /is \d+ times the lowest of its group, 0\.0\d+ µΩ: one of them is written in another unit/,
  },
]);

keepsQuiet("stands-out", [
  [
    "a pole of which the other two have no readings",
    (book) => {
      book.set(CONTACT, 1, "R µΩ", 48.5);
      book.set(CONTACT, 0, "R µΩ", null);
      book.set(CONTACT, 2, "R µΩ", null);
    },
  ],
  [
    "within the accepted share",
    (book) => {
      book.set(CONTACT, 0, "R µΩ", 30);
      book.set(CONTACT, 1, "R µΩ", 40);
      book.set(CONTACT, 2, "R µΩ", 30);
    },
  ],
]);
