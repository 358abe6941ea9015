import { CONTACT, cellOf, type Fault, finds, keepsQuiet } from "../support";

const PERMITS = "GearPermits";
const HOLDER = "Holder";
type Spoil = Fault["spoil"];
/** All permits held by those who measured the contacts, and the first by somebody else. */
const heldBy =
  (name: string): Spoil =>
  (book) => {
    const { rowCount } = cellOf(book, PERMITS, 0, HOLDER);
    const crew = cellOf(book, CONTACT, 0, "Tested by").value;
    for (let row = 0; row < rowCount; row++) book.set(PERMITS, row, HOLDER, crew);
    book.set(PERMITS, 0, HOLDER, name);
  };

finds("permit-holder", [
  {
    name: "a permit held by who looks on",
    spoil: heldBy("Client's inspector (invented)"),
    table: PERMITS,
    row: 0,
    header: HOLDER,
    weight: "query",
    says: /held by Client's inspector \(invented\), whom no record names/,
  },
]);

keepsQuiet("permit-holder", [
  [
    "permits that are all held by others than the crews",
    (book) => {
      const { rowCount } = cellOf(book, PERMITS, 0, HOLDER);
      for (let row = 0; row < rowCount; row++) book.set(PERMITS, row, HOLDER, "Site office");
    },
  ],
  ["no holder: said by another rule", (book) => book.set(PERMITS, 0, HOLDER, null)],
]);
