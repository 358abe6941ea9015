import { expect, test } from "vitest";
import type { MemoryBook } from "../../support/memoryBook";
import { CONTACT, cellOf, finds, keepsQuiet, ofRule, sound } from "../support";

const HEADER = "R at 20 °C µΩ";
const ROW = 4;

/** The record's own formula of a cell, its references to the row written as addresses of one. */
const inAddresses = (book: MemoryBook, row: number, of = row, header = HEADER) =>
  cellOf(book, CONTACT, row, header).formula.replaceAll(
    /GearContact\[\[#This Row\],\[([^\]]+)\]\]/g,
    (_text, name: string) => book.at(CONTACT, of, name),
  );
const put = (book: MemoryBook, row: number, formula: string, header = HEADER) =>
  book.set(CONTACT, row, header, cellOf(book, CONTACT, row, header).value, formula);
const swap = (book: MemoryBook, header: string, from: string | RegExp, to: string) =>
  put(book, ROW, cellOf(book, CONTACT, ROW, header).formula.replace(from, to), header);
const at = { table: CONTACT, row: ROW, weight: "query" as const };

finds("own-formula", [
  {
    ...at,
    name: "the wrong row",
    header: HEADER,
    spoil: (book) => put(book, ROW, inAddresses(book, ROW, ROW - 1)),
    says: /takes "R µΩ" of another row \(=K0002 · Breaker Q0 · L1\).*unlike its neighbours/,
  },
  {
    ...at,
    name: "the wrong column",
    header: HEADER,
    spoil: (book) => swap(book, HEADER, /\[R µΩ\]/g, "[Rated A]"),
    says: /takes "Rated A" in place of "R µΩ"/,
  },
  {
    ...at,
    name: "a cell fixed on every row",
    header: HEADER,
    spoil: (book) => put(book, ROW, inAddresses(book, ROW).replace(/([A-Z])(\d)/, "$1$$$2")),
    says: /from the one cell \w+\$\d+ on every row, fixed by a dollar sign/,
  },
  {
    ...at,
    name: "a wrong factor",
    header: HEADER,
    spoil: (book) => put(book, ROW, `${cellOf(book, CONTACT, ROW, HEADER).formula}*1000`),
    says: /works with 1000, which ours does not/,
  },
  {
    ...at,
    name: "a wrong constant",
    header: HEADER,
    spoil: (book) => swap(book, HEADER, /$/, "+0.5"),
    says: /works with 0\.5, which ours does not/,
  },
  {
    ...at,
    name: "a limit written into it",
    header: "Result",
    spoil: (book) => swap(book, "Result", /GearContact\[\[#This Row\],\[Maximum µΩ\]\]/g, "60"),
    says: /holds the fixed number 60 in place of "Maximum µΩ"/,
  },
  {
    ...at,
    name: "a direction turned",
    header: "Result",
    spoil: (book) => swap(book, "Result", /"most"/g, '"least"'),
    says: /says "least" where ours says "most"/,
  },
]);

test("a reference that no dollar sign fixes is told once for a column that it is filled down", () => {
  const book = sound();
  const { rowCount } = cellOf(book, CONTACT, 0, HEADER);
  for (let row = 0; row < rowCount; row++) put(book, row, `${inAddresses(book, row)}*AZ${row + 5}`);
  const found = ofRule(book.snapshot, "own-formula");
  expect(found.map(({ address }) => address)).toEqual([book.at(CONTACT, 0, HEADER)]);
  expect(found[0]?.message).toMatch(/takes AZ5 from outside the row, .*no dollar sign fixes it/);
  expect(found[0]?.message).toContain(
    `The same applies to ${rowCount - 1} more rows of the column`,
  );
});

keepsQuiet("own-formula", [
  [
    "the record's formula with its references written as addresses",
    (book) => put(book, ROW, inAddresses(book, ROW)),
  ],
  ["a typed value: said by another rule", (book) => book.set(CONTACT, ROW, HEADER, 30)],
]);

test("a whole column of one's own that comes to the same is a note", () => {
  const book = sound();
  const { rowCount } = cellOf(book, CONTACT, 0, HEADER);
  for (let row = 0; row < rowCount; row++) put(book, row, `(${inAddresses(book, row)})`);
  expect(ofRule(book.snapshot, "own-formula").map(({ weight }) => weight)).toEqual(["note"]);
});
