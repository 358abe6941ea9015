import { EARTH_BAR } from "../../support/lineups";
import type { MemoryBook } from "../../support/memoryBook";
import {
  cellOf,
  finds,
  INSULATION,
  keepsQuiet,
  soundlyEquipped,
  soundOf,
  WITHSTAND,
} from "../support";

const CONTROL = "GearControl";
const MECHANISM = "GearMechanism";
const CABLE = "GearCable";

/** So many times the level that the first cable is to be tested at. */
const appliedTo = (book: MemoryBook, times: number) =>
  Math.round(Number(cellOf(book, CABLE, 0, "Required kV").value) * times * 100) / 100;

finds("over-voltage", [
  {
    name: "a withstand test above the required voltage",
    spoil: (book) => book.set(WITHSTAND, 1, "Applied kV", 28),
    table: WITHSTAND,
    row: 1,
    header: "Applied kV",
    weight: "query",
    says: /28 kV was applied; required is 27 kV/,
  },
  {
    name: "control wiring put under far more than asked for",
    spoil: (book) => book.set(CONTROL, 1, "Applied kV", 4),
    table: CONTROL,
    row: 1,
    header: "Applied kV",
    weight: "query",
    says: /"Applied kV" is 4 kV, more than 50 % above the .* kV of "Required kV"/,
  },
  {
    name: "a cable tested a tenth above its level",
    book: soundlyEquipped,
    spoil: (book) => book.set(CABLE, 0, "Applied kV", appliedTo(book, 1.1)),
    table: CABLE,
    row: 0,
    header: "Applied kV",
    weight: "query",
    says: /"Applied kV" is .*, more than 5 % above the/,
  },
  {
    name: "a coil worked at far more than its range",
    spoil: (book) => book.set(MECHANISM, 0, "Closing coil worked at V, high", 180),
    table: MECHANISM,
    row: 0,
    header: "Closing coil worked at V, high",
    weight: "query",
    says: /is 180 V, more than 20 % above the/,
  },
  {
    name: "insulation measured at twice the voltage that the project gives",
    book: () =>
      soundOf(3, {
        criteria: [
          { from: "project", quantity: "joint resistance µΩ", value: 50, document: "invented" },
          EARTH_BAR,
          {
            from: "project",
            quantity: "insulation test voltage V",
            value: 5000,
            document: "invented",
          },
        ],
      }),
    spoil: (book) => book.set(INSULATION, 1, "Test V DC", 10_000),
    table: INSULATION,
    row: 1,
    header: "Test V DC",
    weight: "query",
    says: /"Test V DC" is 10000 V, more than 10 % above the 5000 V/,
  },
]);

keepsQuiet("over-voltage", [
  [
    "more than a standard's least test voltage",
    (book) => book.set(INSULATION, 1, "Test V DC", 10_000),
  ],
  [
    "a word of who agreed to it",
    (book) => {
      book.set(CONTROL, 1, "Applied kV", 4);
      book.set(CONTROL, 1, "Remarks", "by the maker's letter of 3 November (invented)");
    },
  ],
  [
    "a cable within a twentieth",
    (book) => book.set(CABLE, 0, "Applied kV", appliedTo(book, 1.04)),
    soundlyEquipped,
  ],
  ["within the tolerance", (book) => book.set(WITHSTAND, 1, "Applied kV", 27.2)],
  ["too low: said by another rule", (book) => book.set(WITHSTAND, 1, "Applied kV", 20)],
]);
