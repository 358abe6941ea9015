import { filledPlan, SOUND } from "../../support/fill";
import { equippedInFull, longLineup } from "../../support/lineups";
import { memoryBook } from "../../support/memoryBook";
import { finds, keepsQuiet, rowOf, soundlyEquipped } from "../support";

const TABLE = "GearSettingsHeld";
const HASH = "File's hash";
const book = () =>
  memoryBook(
    filledPlan(
      equippedInFull(longLineup(3, { basis: "IEC", furtherRecords: [{ kind: "settings" }] })),
      11,
      SOUND,
    ),
  );
const first = (panel: string) => rowOf(book(), TABLE, panel);

finds("same-file", [
  {
    name: "one hash beside the relays of two panels",
    spoil: (one) => {
      one.set(TABLE, first("=K0001"), HASH, "9f2c1a07");
      one.set(TABLE, first("=K0003"), HASH, "9F2C1A07 ");
    },
    table: TABLE,
    row: first("=K0003"),
    header: HASH,
    weight: "query",
    says: /hash 9F2C1A07 is that of =K0001/,
    book,
  },
]);

keepsQuiet("same-file", [
  [
    "a hash of its own for each relay",
    (one) => {
      one.set(TABLE, first("=K0001"), HASH, "9f2c1a07");
      one.set(TABLE, first("=K0003"), HASH, "0b7745e1");
    },
    book,
  ],
  [
    "one hash beside several settings of a relay",
    (one) => {
      one.set(TABLE, first("=K0001"), HASH, "9f2c1a07");
      one.set(TABLE, first("=K0001") + 1, HASH, "9f2c1a07");
    },
    book,
  ],
  ["a workbook without settings", () => {}, soundlyEquipped],
]);
