import { expect, test } from "vitest";
import {
  cellOf,
  keepsQuiet,
  ofRule,
  soundlyEquipped,
  soundOf,
  TORQUE,
  WITHSTAND,
} from "../support";

const twelve = () => soundOf(12);
const rowsOf = (book: ReturnType<typeof twelve>, table: string) =>
  cellOf(book, table, 0, "Result").rowCount;

test("every joint on its target to the third digit", () => {
  const book = twelve();
  for (let row = 0; row < rowsOf(book, TORQUE); row++) {
    book.set(TORQUE, row, "Maker's N·m", 61.3);
    book.set(TORQUE, row, "Applied N·m", 61.3);
  }
  const found = ofRule(book.snapshot, "too-good");
  expect(found).toMatchObject([{ weight: "query", address: book.at(TORQUE, 0, "Applied N·m") }]);
  expect(found[0]?.message).toMatch(/exactly "Required N·m" here and in nearly all of 24 readings/);
});

test("the same currents on every excitation curve", () => {
  const book = soundOf(3);
  expect(ofRule(book.snapshot, "too-good")).toEqual([]);
  const curves = soundlyEquipped();
  const count = rowsOf(curves, "GearExcitation");
  for (let row = 1; row < count; row++)
    for (let at = 1; at <= 10; at++)
      curves.set(
        "GearExcitation",
        row,
        `A ${at}`,
        cellOf(curves, "GearExcitation", 0, `A ${at}`).value,
      );
  const found = ofRule(curves.snapshot, "too-good");
  expect(count).toBeGreaterThanOrEqual(10);
  expect(found).toMatchObject([{ sheet: "Excitation" }]);
  expect(found[0]?.message).toMatch(/rows share "A 1", .* digit for digit/);
});

test("no charging current, and the same one throughout", () => {
  const book = twelve();
  book.set(WITHSTAND, 4, "Current mA", 0);
  expect(ofRule(book.snapshot, "too-good")).toMatchObject([
    { address: book.at(WITHSTAND, 4, "Current mA"), found: "0" },
  ]);
  const same = twelve();
  for (let row = 0; row < rowsOf(same, WITHSTAND); row++)
    same.set(WITHSTAND, row, "Current mA", 4.7);
  const found = ofRule(same.snapshot, "too-good");
  expect(found).toMatchObject([{ found: "4.7" }]);
  expect(found[0]?.message).toMatch(/is 4.7 in \d+ rows; charging currents differ/);
});

keepsQuiet("too-good", [
  ["targets of two digits", () => {}, twelve],
  [
    "a click wrench, which shows what it was set to",
    (book) => {
      book.set("GearInstruments", 0, "Instrument", "Click wrench");
      for (let row = 0; row < rowsOf(book, TORQUE); row++) {
        book.set(TORQUE, row, "Maker's N·m", 61.3);
        book.set(TORQUE, row, "Applied N·m", 61.3);
      }
    },
    twelve,
  ],
  [
    "a row that did not pass without a current",
    (book) => {
      book.set(WITHSTAND, 4, "Current mA", 0);
      book.set(WITHSTAND, 4, "Duration s", 20);
    },
    twelve,
  ],
]);

/** The clearances of the sound workbook, at so many millimetres, the last of them at another. */
const clear = (last: number, others = 1829) => {
  const book = soundOf(3);
  const rows = [...Array(rowsOf(book, "GearDimensions")).keys()].filter((row) =>
    String(cellOf(book, "GearDimensions", row, "Dimension").value).startsWith("Clearance"),
  );
  for (const row of rows) {
    book.set("GearDimensions", row, "Minimum mm", 1829);
    book.set("GearDimensions", row, "Measured mm", row === rows.at(-1) ? last : others);
  }
  return book;
};

test("clearances that are all their limit to the millimetre, and none where one is not", () => {
  const book = clear(1829);
  const [first, ...more] = ofRule(book.snapshot, "too-good");
  expect(more).toEqual([]);
  expect(first?.sheet).toBe("Dimensions");
  expect(first?.message).toMatch(/is exactly the limit in all of \d rows with one/);
  expect(ofRule(clear(1834).snapshot, "too-good")).toEqual([]);
});
