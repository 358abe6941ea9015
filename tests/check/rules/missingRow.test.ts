import { expect, test } from "vitest";
import { CONTACT, keepsQuiet, ofRule, sound, soundOf, WITHSTAND } from "../support";

keepsQuiet("missing-row", [
  [
    "a kind that the project leaves out",
    (book) => book.removeRow(CONTACT, 40),
    () =>
      soundOf(2, {
        leaveOut: [{ kind: "torque", reason: "Done at the works", document: "INV-7" }],
      }),
  ],
]);

test("a row that the lineup needs and the table lacks is named", () => {
  const book = sound();
  book.removeRow(CONTACT, 3);
  expect(ofRule(book.snapshot, "missing-row")).toMatchObject([
    {
      weight: "stop",
      sheet: "Contacts",
      address: "A4",
      message: expect.stringMatching(/^=K0002 · Breaker Q0 · L1: .*build the lineup onto the work/),
    },
  ]);
});

test("a table that the workbook lacks is named once", () => {
  const book = sound();
  book.removeTable(WITHSTAND);
  expect(ofRule(book.snapshot, "missing-row")).toMatchObject([
    { record: "withstand", sheet: "Withstand", address: "A1" },
  ]);
});
