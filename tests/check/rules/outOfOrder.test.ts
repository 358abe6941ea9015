import { expect, test } from "vitest";
import {
  CONTACT,
  cellOf,
  finds,
  keepsQuiet,
  ofRule,
  rowOf,
  sound,
  soundlyEquipped,
  soundOf,
  TORQUE,
} from "../support";

/** The sound workbook: receipt 16 October, torque 3 November, insulation 14 November, withstand 16 November 2026. */
finds("out-of-order", [
  {
    name: "a joint tightened after the insulation was measured",
    spoil: (book) => book.set(TORQUE, 2, "Date", 46_341),
    table: TORQUE,
    row: 2,
    header: "Date",
    weight: "query",
    says: /dated 2026-11-15, after "Insulation resistance, main circuit" of 2026-11-14 on the same panel/,
  },
  {
    name: "an earth continuity after the withstand test",
    spoil: (book) => book.set("GearEarthing", 2, "Date", 46_344),
    table: "GearEarthing",
    row: 2,
    header: "Date",
    weight: "query",
    says: /after "Withstand/,
  },
  {
    name: "a panel received after it was put up",
    spoil: (book) => book.set("GearHandling", 1, "Date", 46_329),
    table: "GearHandling",
    row: 1,
    header: "Date",
    weight: "query",
    says: /after "/,
  },
  {
    name: "a cable tested before its panel was there",
    spoil: (book) => book.set("GearCable", 2, "Date", 46_300),
    table: "GearCable",
    row: 2,
    header: "Date",
    weight: "query",
    says: /dated 2026-10-05, before "/,
    book: soundlyEquipped,
  },
]);

keepsQuiet("out-of-order", [
  ["both on one day", (book) => book.set(TORQUE, 2, "Date", 46_340)],
  [
    "a row without a reading",
    (book) => {
      book.set(TORQUE, 2, "Applied N·m", null);
      book.set(TORQUE, 2, "Date", 46_346);
    },
  ],
]);

test("the rows of one day are one finding", () => {
  const book = sound();
  for (const row of [0, 1, 2]) book.set(TORQUE, row, "Date", 46_346);
  const found = ofRule(book.snapshot, "out-of-order");
  expect(found).toHaveLength(1);
  expect(found[0]?.message).toMatch(/2 more rows of the table/);
});

test("the record that is named is the one of the day that is named", () => {
  const book = soundOf(2, { furtherRecords: [{ kind: "energization" }] });
  const day = 46_347;
  const { rowCount } = cellOf(book, "GearEnergization", 0, "Date");
  for (let row = 0; row < rowCount; row++) book.set("GearEnergization", row, "Date", day + 2);
  for (const pole of ["L1", "L2", "L3"])
    book.set(CONTACT, rowOf(book, CONTACT, "=K0001", pole), "Date", day + 1);
  const part = "Before: covers, barriers and doors closed and locked";
  book.set("GearEnergization", rowOf(book, "GearEnergization", "=K0001", part), "Date", day);
  const messages = ofRule(book.snapshot, "out-of-order").map(({ message }) => message);
  const named = messages.filter((one) => one.includes("of 2026-11-22"));
  expect(named.length).toBeGreaterThan(0);
  for (const one of named) expect(one).toContain('"Contact resistance');
});
