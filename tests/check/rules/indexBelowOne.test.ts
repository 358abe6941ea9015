import type { MemoryBook } from "../../support/memoryBook";
import { finds, INSULATION, keepsQuiet, soundlyEquipped } from "../support";

/** Readings of the same circuit after one and after ten minutes. */
const read = (min1: number, min10: number) => (book: MemoryBook) => {
  book.set(INSULATION, 2, "R 1 min MΩ", min1);
  book.set(INSULATION, 2, "R 10 min MΩ", min10);
};

finds("index-below-one", [
  {
    name: "a resistance that falls while the voltage is held",
    spoil: read(4500, 4000),
    table: INSULATION,
    row: 2,
    header: "PI",
    weight: "query",
    says: /"PI" is 0\.888889: the resistance fell while the voltage was held. Were the readings exch/,
    book: soundlyEquipped,
  },
  {
    name: "one that falls by more than readings of that size are uncertain by, where no index is meaningful",
    spoil: read(138_000, 90_000),
    table: INSULATION,
    row: 2,
    header: "R 10 min MΩ",
    weight: "query",
    says: /is 90000 MΩ, below "R 1 min MΩ" of 138000 MΩ: the resistance fell/,
    book: soundlyEquipped,
  },
]);

keepsQuiet("index-below-one", [
  ["a resistance that rises", read(4000, 4500), soundlyEquipped],
  [
    "within a fifth, for readings so high that the index is not meaningful",
    read(90_000, 80_000),
    soundlyEquipped,
  ],
]);
