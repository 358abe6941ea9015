import { expect, test } from "vitest";
import type { MemoryBook } from "../../support/memoryBook";
import { cellOf, ofRule, soundlyEquipped } from "../support";

const METERS = "GearMetering";
const SHOWN = "Meter shows";

/** Meters read within 1 % of their scale, to the hundredth of a volt and the tenth of an ampere. */
const read = (): MemoryBook => {
  const book = soundlyEquipped(6);
  const { rowCount } = cellOf(book, METERS, 0, SHOWN);
  for (let row = 0; row < rowCount; row++) {
    const reference = Number(cellOf(book, METERS, row, "Reference").value);
    const scale = Number(cellOf(book, METERS, row, "Full scale").value);
    const off = scale * 0.01 * (((row * 37 + 11) % 19) / 9.5 - 1);
    book.set(METERS, row, SHOWN, Number((reference + off).toFixed(scale > 100 ? 1 : 3)));
  }
  return book;
};

/** Rows of a meter in which it shows what was applied. */
const exact = (book: MemoryBook, ...rows: readonly number[]) => {
  for (const row of rows)
    book.set(METERS, row, SHOWN, cellOf(book, METERS, row, "Reference").value);
};
const found = (book: MemoryBook) => ofRule(book.snapshot, "without-error");
const keyOf = (book: MemoryBook, row: number) =>
  ["Panel", "Meter"].map((header) => cellOf(book, METERS, row, header).value).join(" ");

test("a meter that shows at every point exactly what was applied", () => {
  const book = read();
  expect(found(book)).toEqual([]);
  expect([1, 2].map((row) => keyOf(book, row))).toEqual([keyOf(book, 0), keyOf(book, 0)]);
  exact(book, 0, 1, 2);
  expect(found(book)).toMatchObject([{ weight: "query", address: book.at(METERS, 0, SHOWN) }]);
  expect(found(book)[0]?.message).toMatch(/exactly what it should be at all of 3 points.*once in/);
});

test("several meters are one finding, and weigh more", () => {
  const book = read();
  exact(book, 0, 1, 2, 3, 4, 5);
  const [one, ...others] = found(book);
  expect(others).toEqual([]);
  expect(one?.message).toMatch(/at all of 6 points, from here on and from .* on\./);
});

test("nothing is said of a meter with one point off, nor of meters that are all read so coarsely that none shows an error", () => {
  const book = read();
  exact(book, 0, 1);
  expect(found(book)).toEqual([]);
  const coarse = soundlyEquipped(6);
  const { rowCount } = cellOf(coarse, METERS, 0, SHOWN);
  exact(coarse, ...Array.from({ length: rowCount }, (_, row) => row));
  expect(found(coarse)).toEqual([]);
});

test("points within three last digits of what was worked out, as somebody else's constants round it", () => {
  const book = read();
  const { rowCount } = cellOf(book, METERS, 0, SHOWN);
  for (let row = 0; row < rowCount; row++) {
    const { value } = cellOf(book, METERS, row, SHOWN);
    book.set(METERS, row, SHOWN, Number((Number(value) + 0.0001 * ((row % 7) + 1)).toFixed(4)));
  }
  for (const row of [0, 1, 2])
    book.set(
      METERS,
      row,
      SHOWN,
      Number((Number(cellOf(book, METERS, row, "Reference").value) + 0.0002).toFixed(4)),
    );
  expect(found(book)).toMatchObject([{ weight: "query", address: book.at(METERS, 0, SHOWN) }]);
  expect(found(book)[0]?.message).toMatch(/is within three last digits of what it should be/);
});
