import { expect, test } from "vitest";
import { CONTACT, cellOf, keepsQuiet, ofRule, sound } from "../support";

keepsQuiet("duplicated-row", [
  ["rows of one panel and different poles", () => {}],
  [
    "a further day's permit, as its sheet asks for",
    (book) => {
      book.copyRow("GearPermits", 0);
      book.set("GearPermits", 2, "Permit number", "P-2");
    },
  ],
]);

test("the same permit twice is found", () => {
  const book = sound();
  book.copyRow("GearPermits", 0);
  expect(ofRule(book.snapshot, "duplicated-row")).toMatchObject([
    { address: book.at("GearPermits", 2, "For") },
  ]);
});

test("a row copied is found at the copy, with the place of the first", () => {
  const book = sound();
  const { rowCount } = cellOf(book, CONTACT, 0, "Panel");
  book.copyRow(CONTACT, 4);
  expect(ofRule(book.snapshot, "duplicated-row")).toMatchObject([
    {
      weight: "query",
      address: book.at(CONTACT, rowCount, "Panel"),
      message: expect.stringMatching(/is there twice \(also at A9\); keep the one that counts/),
    },
  ]);
});
