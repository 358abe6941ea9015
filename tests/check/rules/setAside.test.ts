import { expect, test } from "vitest";
import { CONTACT, cellOf, keepsQuiet, ofRule, sound } from "../support";

keepsQuiet("set-aside", [
  [
    "a blank row",
    (book) => {
      book.copyRow(CONTACT, 4);
      const last = cellOf(book, CONTACT, 0, "Panel").rowCount - 1;
      for (const header of ["Panel", "Part", "Pole", "R µΩ"]) book.set(CONTACT, last, header, null);
    },
  ],
]);

test("rows of a panel that the lineup does not have are told once, with their readings", () => {
  const book = sound();
  for (const row of [3, 4]) {
    book.copyRow(CONTACT, row);
    book.set(CONTACT, cellOf(book, CONTACT, 0, "Panel").rowCount - 1, "Panel", "=K0099");
  }
  const { rowCount } = cellOf(book, CONTACT, 0, "Panel");
  expect(ofRule(book.snapshot, "set-aside")).toMatchObject([
    {
      weight: "note",
      address: book.at(CONTACT, rowCount - 2, "Panel"),
      message: expect.stringMatching(/^=K0099 is not a panel .* 2 rows with 2 readings set aside/),
    },
  ]);
});
