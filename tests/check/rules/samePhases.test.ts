import { expect, test } from "vitest";
import type { MemoryBook } from "../../support/memoryBook";
import {
  CONTACT,
  cellOf,
  finds,
  INSULATION,
  keepsQuiet,
  ofRule,
  rowOf,
  soundlyEquipped,
  soundOf,
} from "../support";

const R = "R 1 min MΩ";
const circuit = (book: MemoryBook, panel: string) =>
  rowOf(book, INSULATION, panel, "L1-E", "before");

/** The reading of a panel's first phase in all three of them. */
const alike =
  (...panels: readonly string[]) =>
  (book: MemoryBook) => {
    for (const panel of panels) {
      const first = circuit(book, panel);
      for (const row of [first + 1, first + 2])
        book.set(INSULATION, row, R, cellOf(book, INSULATION, first, R).value);
    }
  };
const eight = () => soundOf(8);

finds("same-phases", [
  {
    name: "three phases of a panel at one reading",
    spoil: alike("=K0003"),
    table: INSULATION,
    row: circuit(eight(), "=K0003"),
    header: R,
    weight: "query",
    says: /=K0003 .* and the 2 after it: "R 1 min MΩ" is \d+ in all of them.*once in .*Was each measured/,
    book: eight,
  },
  {
    name: "all earthed parts of a panel at one reading",
    spoil: (book) => {
      for (const part of [1, 2])
        book.set(
          "GearEarthing",
          rowOf(book, "GearEarthing", "=K0004") + part,
          "Drop V",
          cellOf(book, "GearEarthing", rowOf(book, "GearEarthing", "=K0004"), "Drop V").value,
        );
    },
    table: "GearEarthing",
    row: rowOf(eight(), "GearEarthing", "=K0004"),
    header: "Drop V",
    weight: "query",
    says: /"Drop V" is 0\.\d+ in all of them/,
    book: eight,
  },
]);

keepsQuiet("same-phases", [
  [
    "two phases of three",
    (book) =>
      book.set(
        INSULATION,
        circuit(book, "=K0003") + 1,
        R,
        cellOf(book, INSULATION, circuit(book, "=K0003"), R).value,
      ),
    eight,
  ],
  [
    "fewer than four parts to compare with",
    (book) => {
      for (const row of [1, 2])
        book.set(
          "GearCable",
          row,
          "Insulation MΩ",
          cellOf(book, "GearCable", 0, "Insulation MΩ").value,
        );
    },
    soundlyEquipped,
  ],
]);

test("nothing is made of a column in which phases are alike throughout, nor of readings of one figure", () => {
  const book = eight();
  const { rowCount } = cellOf(book, CONTACT, 0, "R µΩ");
  for (let row = 0; row < rowCount; row++) book.set(CONTACT, row, "R µΩ", 20 + Math.floor(row / 3));
  expect(ofRule(book.snapshot, "same-phases")).toEqual([]);
  for (let row = 0; row < rowCount; row++)
    book.set(CONTACT, row, "R µΩ", 20 + (row % 7 > 3 ? 1 : 0));
  for (const row of [0, 1, 2]) book.set(CONTACT, row, "R µΩ", 20);
  expect(ofRule(book.snapshot, "same-phases")).toEqual([]);
});

test("the finding says in how many tables chance makes one, and weighs by it", () => {
  const book = eight();
  alike("=K0002")(book);
  const [found] = ofRule(book.snapshot, "same-phases");
  const tables = Number(found?.message.match(/once in (\S+) such/)?.[1]);
  expect(tables).toBeGreaterThan(1000);
  expect(found?.weight).toBe("query");
});
