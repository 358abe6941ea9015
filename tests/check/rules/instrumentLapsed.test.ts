import { expect, test } from "vitest";
import { CONTACT, finds, INSULATION, keepsQuiet, ofRule, sound } from "../support";

finds("instrument-lapsed", [
  {
    name: "an instrument used after its calibration ran out",
    spoil: (book) => book.set(INSULATION, 2, "Date", 46_800),
    table: INSULATION,
    row: 2,
    header: "Instrument",
    weight: "stop",
    says: /outside its calibration from 2026-01-01 to 2027-01-01/,
  },
  {
    name: "a date as ISO text, after the calibration ran out",
    spoil: (book) => book.set(CONTACT, 1, "Date", "2027-05-01"),
    table: CONTACT,
    row: 1,
    header: "Instrument",
    weight: "stop",
    says: /used on 2027-05-01/,
  },
]);

keepsQuiet("instrument-lapsed", [
  ["the day on which the calibration is due", (book) => book.set(CONTACT, 1, "Date", "2027-01-01")],
  ["no date: said by another rule", (book) => book.set(CONTACT, 1, "Date", null)],
  [
    "an instrument that is not listed: said by another rule",
    (book) => book.set(CONTACT, 1, "Instrument", "X-9"),
  ],
]);

test("an instrument that lapsed is one finding for each table that it was used in, at its first row there", () => {
  const book = sound();
  const rows = [2, 3, 5, 6, 7, 8, 9];
  for (const row of rows) book.set(INSULATION, row, "Date", 46_800);
  book.set(CONTACT, 1, "Date", 46_800);
  const found = ofRule(book.snapshot, "instrument-lapsed");
  const at = (row: number) => book.at(INSULATION, row, "Instrument");
  expect(found.map(({ address, weight, found }) => [address, weight, found])).toEqual(
    expect.arrayContaining([
      [at(2), "stop", "X-1 × 7"],
      [book.at(CONTACT, 1, "Instrument"), "stop", "X-1"],
    ]),
  );
  expect(found).toHaveLength(2);
  expect(found.find(({ address }) => address === at(2))?.message).toContain(
    `to 6 more rows of the table, at ${[3, 5, 6, 7, 8].map(at).join(", ")} and 1 more.`,
  );
});

test("an instrument whose calibration dates are not listed is asked about", () => {
  const book = sound();
  book.set("GearInstruments", 0, "Due", null);
  const [first] = ofRule(book.snapshot, "instrument-lapsed");
  expect(first).toMatchObject({ weight: "query" });
  expect(first?.message).toContain("no calibration dates in the table of instruments");
});
