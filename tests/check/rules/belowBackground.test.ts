import { finds, keepsQuiet, rowOf, soundOf } from "../support";

const TABLE = "GearPartialDischarge";
const book = () => soundOf(2, { furtherRecords: [{ kind: "partialDischarge" }] });

finds("below-background", [
  {
    name: "a level 6 dB below what was there without voltage",
    spoil: (one) => {
      one.set(TABLE, 0, "Background", 18);
      one.set(TABLE, 0, "Level", 12);
    },
    table: TABLE,
    row: 0,
    header: "Level",
    weight: "query",
    says: /level 12 dB\S+, below the background of 18 dB/,
    book,
  },
]);

keepsQuiet("below-background", [
  [
    "a level 2 dB below it, read one after the other",
    (one) => {
      one.set(TABLE, 0, "Background", 8);
      one.set(TABLE, 0, "Level", 6);
    },
    book,
  ],
  [
    "no level yet",
    (one) => {
      one.set(TABLE, rowOf(one, TABLE, "=K0002"), "Background", 18);
      one.set(TABLE, rowOf(one, TABLE, "=K0002"), "Level", null);
    },
    book,
  ],
]);
