import { SOUND } from "../../support/fill";
import type { MemoryBook } from "../../support/memoryBook";
import { finds, INSULATION, keepsQuiet, rowOf, soundOf } from "../support";

/** Readings that lie close together, as of panels made alike. */
const alike = () =>
  soundOf(
    6,
    {},
    {
      GearInsulation: (row, next) => ({
        ...SOUND.GearInsulation?.(row, next),
        reading: Math.round(100_000 + 20_000 * next()),
      }),
    },
  );
const row = (book: MemoryBook) => rowOf(book, INSULATION, "=K0003", "L2-E", "before");
const set = (value: number) => (book: MemoryBook) =>
  book.set(INSULATION, row(book), "R 1 min MΩ", value);

finds("off-group", [
  {
    name: "a reading that passes and stands far out from similar ones",
    spoil: set(1_000_000),
    table: INSULATION,
    row: row(alike()),
    header: "R 1 min MΩ",
    weight: "note",
    says: /stands out from \d+ similar readings: their middle is .* MΩ, and it is .* times above it/,
    book: alike,
  },
]);

const EARTHING = "GearEarthing";
/** Drops along the enclosures of ten panels, each within a factor of two of the others. */
const earthed = () =>
  soundOf(
    10,
    {},
    {
      GearEarthing: (given, next) => ({
        ...SOUND.GearEarthing?.(given, next),
        reading: Number((0.008 + 0.008 * next()).toFixed(4)),
      }),
    },
  );
const enclosure = rowOf(earthed(), EARTHING, "=K0003", "Enclosure");

finds("off-group", [
  {
    name: "a path to earth that resists twenty times as much as its like",
    spoil: (book) => book.set(EARTHING, enclosure, "Drop V", 0.25),
    table: EARTHING,
    row: enclosure,
    header: "Drop V",
    weight: "query",
    says: /0\.25 V stands out from 9 similar readings/,
    book: earthed,
  },
]);

keepsQuiet("off-group", [
  [
    "a path to earth of five times its like",
    (book) => book.set(EARTHING, enclosure, "Drop V", 0.05),
    earthed,
  ],
  ["within a factor of five", set(400_000), alike],
  ["a reading that does not pass", set(1000), alike],
  ["readings that lie far apart themselves", set(1_000_000)],
]);
