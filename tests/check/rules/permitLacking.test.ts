import { expect, test } from "vitest";
import {
  CONTACT,
  cellOf,
  finds,
  INSULATION,
  keepsQuiet,
  ofRule,
  sound,
  TORQUE,
  WITHSTAND,
} from "../support";

const PERMITS = "GearPermits";
/** The sound workbook's permits hold from 16 October to 27 November 2026; its tests lie from 4 to 20 November. */
const [FROM, TO] = [46_310, 46_352];

finds("permit-lacking", [
  {
    name: "a test after the last permit",
    spoil: (book) => book.set(CONTACT, 3, "Date", TO + 3),
    table: CONTACT,
    row: 3,
    header: "Date",
    weight: "stop",
    says: /made on 2026-11-29, which no "Permit to work" covers/,
  },
  {
    name: "a permit that ended before much of the work",
    spoil: (book) => book.set(PERMITS, 0, "Valid to", 46_332),
    table: PERMITS,
    row: 0,
    header: "Valid to",
    weight: "stop",
    says: /valid to 2026-11-06, and no permit covers the work after it: .*Insulation/,
  },
  {
    name: "a withstand test that the permit to work covers, not the sanction for high voltage",
    spoil: (book) => book.set(PERMITS, 1, "Valid to", 46_341),
    table: WITHSTAND,
    row: 0,
    header: "Date",
    weight: "stop",
    says: /no "Sanction for high-voltage tests" covers.*more rows/,
  },
  {
    name: "a withstand test before the sanction for it",
    spoil: (book) => book.set(PERMITS, 1, "Valid from", 46_345),
    table: WITHSTAND,
    row: 0,
    header: "Date",
    weight: "stop",
    says: /no "Sanction for high-voltage tests" covers/,
  },
  {
    name: "two sorts of permit under one number",
    spoil: (book) =>
      book.set(PERMITS, 1, "Permit number", cellOf(book, PERMITS, 0, "Permit number").value),
    table: PERMITS,
    row: 1,
    header: "Permit number",
    weight: "query",
    says: /two permits cannot share a number/,
  },
  {
    name: "a test after the hour at which the permit ended",
    spoil: (book) => {
      for (const row of [0, 1]) book.set(PERMITS, row, "Valid to", TO + 0.7);
      book.set(CONTACT, 3, "Date", TO + 0.8);
    },
    table: CONTACT,
    row: 3,
    header: "Date",
    weight: "stop",
    says: /covers/,
  },
]);

keepsQuiet("permit-lacking", [
  ["work before the first permit", (book) => book.set(TORQUE, 0, "Date", FROM - 4)],
  ["documents", (book) => book.set("GearDocuments", 0, "Date", TO + 9)],
  [
    "days that two permits cover between them",
    (book) => {
      book.set(PERMITS, 0, "Valid to", 46_339);
      book.copyRow(PERMITS, 0);
      book.set(PERMITS, 2, "Permit number", "P-2");
      book.set(PERMITS, 2, "Valid from", 46_340);
      book.set(PERMITS, 2, "Valid to", TO);
    },
  ],
  [
    "a permit without its days",
    (book) => {
      for (const row of [0, 1]) book.set(PERMITS, row, "Valid to", null);
    },
  ],
  [
    "a row without a reading",
    (book) => {
      book.set(INSULATION, 0, "R 1 min MΩ", null);
      book.set(INSULATION, 0, "Date", TO + 9);
    },
  ],
]);

test("a permit of one panel covers no other", () => {
  const book = sound();
  book.set(PERMITS, 0, "Valid to", 46_339);
  book.copyRow(PERMITS, 0);
  book.set(PERMITS, 2, "For", "=K0001");
  book.set(PERMITS, 2, "Valid from", 46_340);
  book.set(PERMITS, 2, "Valid to", TO);
  const found = ofRule(book.snapshot, "permit-lacking");
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({ address: book.at(PERMITS, 0, "Valid to") });
  expect(cellOf(book, PERMITS, 2, "For").value).toBe("=K0001");
});
