import { expect, test } from "vitest";
import type { MemoryBook } from "../../support/memoryBook";
import { cellOf, ofRule, soundlyEquipped } from "../support";

const CURVES = "GearExcitation";
const HEADERS = Array.from({ length: 10 }, (_, at) => [`V ${at + 1}`, `A ${at + 1}`]).flat();

/** Row 5 reads as row 1 does but for some cells. */
const copied = (book: MemoryBook, ...changed: readonly string[]) => {
  for (const header of HEADERS) {
    const value = Number(cellOf(book, CURVES, 1, header).value);
    book.set(
      CURVES,
      5,
      header,
      changed.includes(header) ? Number((value * 1.03).toFixed(4)) : value,
    );
  }
};

test.each([
  ["one cell changed", ["V 4"], "V 4"],
  ["two cells changed", ["V 4", "A 9"], "V 4"],
] as const)("a curve copied from another, %s", (_name, changed, header) => {
  const book = soundlyEquipped();
  expect(ofRule(book.snapshot, "near-copy")).toEqual([]);
  copied(book, ...changed);
  const found = ofRule(book.snapshot, "near-copy");
  expect(found).toMatchObject([{ weight: "query", address: book.at(CURVES, 5, header) }]);
  expect(found[0]?.message).toMatch(
    new RegExp(`${20 - changed.length} of 20 readings are digit for digit those of .*once in`),
  );
});

test("nothing is made of three cells that differ, of a whole copy, which another rule tells, or of few readings", () => {
  for (const changed of [["V 4", "A 9", "A 2"], []]) {
    const book = soundlyEquipped();
    copied(book, ...changed);
    expect(ofRule(book.snapshot, "near-copy")).toEqual([]);
  }
  const book = soundlyEquipped();
  for (const row of [0, 1, 2])
    for (const header of ["Insulation MΩ", "Sheath MΩ"])
      book.set("GearCable", row, header, cellOf(book, "GearCable", 3 + row, header).value);
  expect(ofRule(book.snapshot, "near-copy")).toEqual([]);
});
