import { expect, test } from "vitest";
import { filledPlan, SOUND } from "../../support/fill";
import { equippedInFull, longLineup } from "../../support/lineups";
import { type MemoryBook, memoryBook } from "../../support/memoryBook";
import {
  CONTACT,
  cellOf,
  finds,
  keepsQuiet,
  ofRule,
  rowOf,
  soundlyEquipped,
  TORQUE,
} from "../support";

const PROTECTION = "GearProtection";
const FUNCTION = "GearFunction";
/** The first row of a relay's injection, and its trip among the functions. */
const injected = (book: MemoryBook) => rowOf(book, PROTECTION, "=K0001", "F1 51");
const trips = (book: MemoryBook) =>
  rowOf(book, FUNCTION, "=K0001", "Relay F1 trips its breaker and is shown");
const dayOf = (book: MemoryBook, table: string, row: number) =>
  Number(cellOf(book, table, row, "Date").value);

const SETTINGS = "GearSettingsHeld";
/** Two panels whose relays' settings are read back. */
const readBack = (): MemoryBook => {
  const whole = equippedInFull(longLineup(2, { basis: "IEC" }));
  const relaySettings = [{ relay: "F1", parameter: "51 pick-up", value: "1.2", unit: "A" }];
  const panels = whole.panels.map((panel) => ({ ...panel, relaySettings }));
  return memoryBook(filledPlan({ ...whole, panels }, 11, SOUND));
};
const held = rowOf(readBack(), SETTINGS, "=K0002");
const lastInjection = Number(
  cellOf(readBack(), PROTECTION, rowOf(readBack(), PROTECTION, "=K0002", "F1 51"), "Date").value,
);
/** The injection of the first relay's first point, by so many days from its panel's wiring test. */
const injectedFrom = (book: MemoryBook, days: number) =>
  book.set(
    PROTECTION,
    injected(book),
    "Date",
    dayOf(book, "GearControl", rowOf(book, "GearControl", "=K0001")) + days,
  );

finds("before-predecessor", [
  {
    name: "settings read back before the relay was injected",
    spoil: (book) => book.set(SETTINGS, held, "Date", lastInjection - 1),
    table: SETTINGS,
    row: held,
    header: "Date",
    weight: "query",
    says: /dated .*, before "Protection relays" of .*, which must come first/,
    book: readBack,
  },
  {
    name: "a relay injected before its wiring was tested",
    spoil: (book) => injectedFrom(book, -1),
    table: PROTECTION,
    row: injected(soundlyEquipped()),
    header: "Date",
    weight: "query",
    says: /before "Insulation and withstand, control wiring" of/,
    book: soundlyEquipped,
  },
  {
    name: "contacts measured before the joints were tightened",
    spoil: (book) => book.set(CONTACT, 0, "Date", 46_325),
    table: CONTACT,
    row: 0,
    header: "Date",
    weight: "query",
    says: /dated 2026-10-30, before "Torque of bolted joints" of .*, which must come first/,
  },
  {
    name: "a relay's trip tried before it was injected",
    spoil: (book) =>
      book.set(PROTECTION, injected(book), "Date", dayOf(book, FUNCTION, trips(book)) + 1),
    table: FUNCTION,
    row: trips(soundlyEquipped()),
    header: "Date",
    weight: "query",
    says: /dated .*, before "Protection/,
    book: soundlyEquipped,
  },
]);

keepsQuiet("before-predecessor", [
  [
    "settings read back on the day of the injection",
    (book) => book.set(SETTINGS, held, "Date", lastInjection),
    readBack,
  ],
  [
    "settings read back before, of a relay whose own record says what it was left at",
    (book) => {
      book.set(SETTINGS, held, "Date", lastInjection - 1);
      const { rowCount } = cellOf(book, PROTECTION, 0, "Date");
      for (let row = 0; row < rowCount; row++)
        book.set(
          PROTECTION,
          row,
          "As left: pick-up",
          cellOf(book, PROTECTION, row, "Pick-up set").value,
        );
    },
    readBack,
  ],
  ["a relay injected on the day of its wiring", (book) => injectedFrom(book, 0), soundlyEquipped],
  [
    "a relay injected on the bench, as its remark says",
    (book) => {
      injectedFrom(book, -1);
      book.set(
        PROTECTION,
        injected(book),
        "Remarks",
        "on the bench; trip tried again after wiring",
      );
    },
    soundlyEquipped,
  ],
  ["the very day", (book) => book.set(CONTACT, 0, "Date", cellOf(book, TORQUE, 0, "Date").value)],
  ["no date: said by another rule", (book) => book.set(CONTACT, 0, "Date", null)],
]);

test("what all functions of a panel are dated before is told once", () => {
  const book = soundlyEquipped();
  const early = dayOf(book, FUNCTION, 0) - 20;
  const { rowCount } = cellOf(book, FUNCTION, 0, "Date");
  for (let row = 0; row < rowCount; row++)
    if (cellOf(book, FUNCTION, row, "Panel or lineup").value === "=K0001")
      book.set(FUNCTION, row, "Date", early);
  const wiring = ofRule(book.snapshot, "before-predecessor").filter(({ message }) =>
    message.includes("ontrol"),
  );
  expect(wiring).toHaveLength(1);
  expect(wiring[0]?.message).toMatch(/The same applies to \d+ more rows of the table/);
});
