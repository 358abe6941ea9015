import { expect, test } from "vitest";
import { CONTACT, finds, keepsQuiet, ofRule, sound } from "../support";

finds("instrument-unknown", [
  {
    name: "an instrument that nobody listed",
    spoil: (book) => book.set(CONTACT, 1, "Instrument", "X-9"),
    table: CONTACT,
    row: 1,
    header: "Instrument",
    weight: "query",
    says: /"X-9" is not in the table of instruments; list it/,
  },
  {
    name: "one whose Id looks like a listed one",
    spoil: (book) => book.set(CONTACT, 1, "Instrument", "\u0425-1"),
    table: CONTACT,
    row: 1,
    header: "Instrument",
    weight: "query",
    says: /To the eye the names are the same: "\u0425" is a letter of another alphabet/,
  },
  {
    name: "the same on three rows: once, at the first",
    spoil: (book) => {
      for (const row of [1, 2, 4]) book.set(CONTACT, row, "Instrument", "X-9");
    },
    table: CONTACT,
    row: 1,
    header: "Instrument",
    weight: "query",
    says: /"X-9" is not in the table of instruments.* The same applies to 2 more rows of the table, at /,
  },
]);

keepsQuiet("instrument-unknown", [
  ["capital and small letters", (book) => book.set(CONTACT, 1, "Instrument", " x-1 ")],
  ["no instrument: said by another rule", (book) => book.set(CONTACT, 1, "Instrument", null)],
]);

test("one that was typed below the table, which did not take it in, is told with its cell", () => {
  const book = sound();
  book.set(CONTACT, 1, "Instrument", "X-9");
  const { snapshot } = book;
  const sheets = snapshot.sheets.map((sheet) => {
    const list = sheet.tables.find(({ name }) => name === "GearInstruments");
    if (!list) return sheet;
    const below = list.top + 1 + list.rowCount;
    const cell = (row: number, column: number) =>
      row === below && column === list.left ? "x-9" : null;
    return {
      ...sheet,
      cells: { rowCount: below + 1, columnCount: 9, cell, formula: () => undefined },
    };
  });
  const [found] = ofRule({ ...snapshot, sheets }, "instrument-unknown");
  expect(found?.message).toMatch(/it stands just below it, in A\d+: drag/);
  expect(ofRule(snapshot, "instrument-unknown")[0]?.message).toMatch(/list it with its serial/);
});
