import { expect, test } from "vitest";
import { cellOf, findingsOf, ofRule, sound } from "../support";

test.each([
  ["Cover", "GearProject", 4, "Value", "IEC", /"Value" shows IEC; .* has NETA/],
  ["Criteria", "GearCriteria", 0, "Value", 999, /shows 999; .* has 50/],
  ["Equipment", "GearEquipment", 0, "Value", 999, /shows 999; .* has 50/],
  ["Settings", "GearSettings", 0, "Sort", "B", /shows B; .* has A/],
  ["Panels", "GearPanels", 0, "Rated current A", 2500, /shows 2500; .* has 1250/],
  ["Panels", "GearPanels", 0, "Bus section", null, /shows blank; .* has Section 1/],
] as const)(
  "a change on the sheet %s, by which the records are not judged, is told with its cell and both values",
  (sheet, table, row, header, value, says) => {
    const book = sound();
    book.set(table, row, header, value);
    // A record sheet's own givens are held against the lineup besides.
    const found = findingsOf(book.snapshot).filter(({ rule }) => rule !== "given-differs");
    expect(found).toMatchObject([
      { rule: "sheets-differ", weight: "query", sheet, address: book.at(table, row, header) },
    ]);
    expect(found[0]?.message).toMatch(says);
  },
);

test("a line that is gone, one that was added, and many differences of one sheet", () => {
  const book = sound();
  book.removeRow("GearEquipment", 3);
  expect(ofRule(book.snapshot, "sheets-differ")).toMatchObject([{ sheet: "Equipment" }]);
  const more = sound();
  more.copyRow("GearCriteria", 0);
  expect(ofRule(more.snapshot, "sheets-differ")).toMatchObject([
    { sheet: "Criteria", expected: "", address: expect.stringMatching(/^A/) },
  ]);
  const many = sound();
  for (let row = 0; row < 12; row++) many.set("GearEquipment", row, "Value", "otherwise");
  const found = ofRule(many.snapshot, "sheets-differ");
  expect(found).toHaveLength(1);
  expect(found[0]?.message).toMatch(/shows 11 more such differences, at C6, C7, .* and further on/);
});

test("nothing is said where the sheets tell the same, whatever is noted on the cover besides", () => {
  expect(ofRule(sound().snapshot, "sheets-differ")).toEqual([]);
  const book = sound();
  const { rowCount } = cellOf(book, "GearProject", 0, "Item");
  book.copyRow("GearProject", 0);
  book.set("GearProject", rowCount, "Item", "Site telephone");
  expect(ofRule(book.snapshot, "sheets-differ")).toEqual([]);
});

/** What cannot be read of an instrument says nothing about the lineup. */
test.each([
  ["Instrument", null],
  ["Serial number", null],
  ["Calibrated", "n/a"],
  ["Due", "n/a"],
  ["Due", null],
  ["Accuracy ± %", "n/a"],
  ["Ranges", "see manual"],
] as const)(
  "an instrument whose %s holds %s makes no other lineup of the sheets",
  (header, value) => {
    const book = sound();
    book.copyRow("GearInstruments", 0);
    book.set("GearInstruments", 1, "Id", "TH-9");
    book.set("GearInstruments", 1, "Serial number", "X-9");
    book.set("GearInstruments", 1, header, value);
    expect(ofRule(book.snapshot, "sheets-differ")).toEqual([]);
    // Nor where the sheets are all there is.
    const { lineup: _kept, ...bare } = book.snapshot;
    expect(ofRule(bare, "sheets-differ")).toEqual([]);
    expect(findingsOf(bare).filter(({ rule }) => rule !== "sheets-differ")).toEqual([]);
  },
);
